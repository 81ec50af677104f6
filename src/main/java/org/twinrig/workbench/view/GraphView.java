package org.twinrig.workbench.view;

import java.util.List;
import org.twinrig.report.html.Plate;

/**
 * One old graph re-expressed.
 *
 * @param frame around it
 * @param graph its name
 * @param sentences what to do with it and why
 * @param plates the drawing
 * @param csv the way to its table
 */
public record GraphView(
    Frame frame, String graph, List<String> sentences, List<Plate> plates, String csv) {
  public GraphView {
    sentences = List.copyOf(sentences);
    plates = List.copyOf(plates);
  }
}
