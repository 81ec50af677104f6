package org.twinrig.workbench.view;

import java.util.List;

/**
 * study.yaml as a text to edit.
 *
 * @param frame around it
 * @param text as it stands, or as it was sent
 * @param complaints why it was not written; empty otherwise
 */
public record TextView(Frame frame, String text, List<Complaint> complaints) {

  public TextView {
    complaints = List.copyOf(complaints);
  }

  /**
   * Something wrong with the text.
   *
   * @param problem in the words of the command line
   * @param number of the line, from 1; 0 when the whole is meant
   * @param line as it was sent
   */
  public record Complaint(String problem, int number, String line) {}
}
