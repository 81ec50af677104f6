package org.twinrig.workbench.view;

import java.util.List;

/**
 * The form in which a sender says what files are.
 *
 * @param frame around it
 * @param parcel the number of the parcel
 * @param problems why what was said was not taken; empty otherwise
 * @param all what holds for all files
 * @param files what a file says otherwise
 * @param kinds a graph may be of
 * @param references a graph may have been compensated by
 */
public record SentView(
    Frame frame,
    long parcel,
    List<String> problems,
    Said all,
    List<Said> files,
    List<String> kinds,
    List<Option> references) {

  public SentView {
    problems = List.copyOf(problems);
    files = List.copyOf(files);
    kinds = List.copyOf(kinds);
    references = List.copyOf(references);
  }

  /**
   * What is said, of one file or of all.
   *
   * @param prefix of the names of its fields
   * @param name of the file; empty for all files
   * @param kind of the unit
   * @param seatings averaged
   * @param sides averaged
   * @param form raw or compensated
   * @param reference that was subtracted
   * @param smoothing of the graph
   */
  public record Said(
      String prefix,
      String name,
      String kind,
      String seatings,
      String sides,
      String form,
      String reference,
      String referenceSmoothing,
      String smoothing) {

    /** Whether a file says anything otherwise: true when any field is filled. */
    public boolean own() {
      return !(kind + seatings + sides + form + reference + referenceSmoothing + smoothing)
          .isEmpty();
    }
  }

  /**
   * Something to choose.
   *
   * @param value that is sent
   * @param text that is shown
   */
  public record Option(String value, String text) {}
}
