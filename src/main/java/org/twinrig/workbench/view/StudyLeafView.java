package org.twinrig.workbench.view;

import java.util.List;
import java.util.Optional;
import org.twinrig.report.html.Plate;

/**
 * How the study stands, and what the last change did.
 *
 * @param frame around it
 * @param sentences what was found
 * @param change what the last change did; nothing on the first leaf
 * @param problems met while reading
 */
public record StudyLeafView(
    Frame frame,
    List<String> sentences,
    Optional<Change> change,
    List<Kind> kinds,
    List<String> problems) {

  public StudyLeafView {
    sentences = List.copyOf(sentences);
    kinds = List.copyOf(kinds);
    problems = List.copyOf(problems);
  }

  /**
   * What a change did.
   *
   * @param what was done
   * @param kinds those it moved
   * @param unmoved said when it moved none
   */
  public record Change(String what, List<Moved> kinds, String unmoved) {
    public Change {
      kinds = List.copyOf(kinds);
    }
  }

  /**
   * A kind that was moved.
   *
   * @param kind its name
   * @param before its marks before
   * @param after its marks now
   */
  public record Moved(String kind, List<String> sentences, Strip before, Strip after) {
    public Moved {
      sentences = List.copyOf(sentences);
    }
  }

  /**
   * A kind as it stands.
   *
   * @param kind its name
   * @param plates its transfer drawn
   * @param zones the way to its zones
   */
  public record Kind(String kind, List<Plate> plates, Link zones) {
    public Kind {
      plates = List.copyOf(plates);
    }
  }
}
