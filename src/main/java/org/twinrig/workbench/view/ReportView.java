package org.twinrig.workbench.view;

import java.util.List;

/**
 * The page the report and the readers' page are made from.
 *
 * @param frame around it
 * @param explained the page for readers
 * @param remarks what the lab should know of the one made last
 */
public record ReportView(Frame frame, Sheet report, Sheet explained, List<String> remarks) {

  public ReportView {
    remarks = List.copyOf(remarks);
  }

  /**
   * Something that is written.
   *
   * @param place where it goes
   * @param there whether it was written before
   * @param fresh whether it rests on the leaf at hand
   */
  public record Sheet(String place, boolean there, boolean fresh) {

    /** How it stands, in a sentence. */
    public String state() {
      if (!there) {
        return "It has not been written yet.";
      }
      return fresh
          ? "It was written from the study as it stands now."
          : "It was written before the last change and does not show it.";
    }
  }
}
