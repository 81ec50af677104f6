package org.twinrig.workbench;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.StudyText;

/**
 * The whole of study.yaml as a text, for every key that has no field of its own. What the reader
 * refuses is shown with its line and is not written.
 */
record TextPages(StudySession session, Pages pages) {

  Response text(Request request) throws IOException {
    Frame frame = frame(); // before the text: a page that is older than it is refused later
    return filled(200, frame, session.yaml().text(), List.of());
  }

  Response change(Request request) throws Exception {
    String before = session.yaml().text();
    String sent = request.raw("text").replace("\r\n", "\n");
    try {
      session.settle(
          request.number("revision"),
          new StudyText(asBefore(before, sent)),
          "The text of study.yaml was edited.");
      return Response.seeOther("./study");
    } catch (UnusableInput e) {
      return filled(400, frame(), sent, e.problems());
    }
  }

  /** A browser sends its own line ends; the file keeps those it has. */
  private static String asBefore(String before, String sent) {
    if (before.replace("\r\n", "\n").equals(sent)) {
      return before;
    }
    return before.contains("\r\n") ? sent.replace("\n", "\r\n") : sent;
  }

  private Frame frame() throws IOException {
    return pages.frame(Frame.Part.SETTINGS, "Text of study.yaml", "./settings-text");
  }

  private Response filled(int status, Frame frame, String text, List<Problem> problems) {
    String yaml = session.yamlName();
    return Pages.fill(
        status,
        "text.jte",
        Map.of("frame", frame, "text", text, "yaml", yaml, "problems", problems));
  }
}
