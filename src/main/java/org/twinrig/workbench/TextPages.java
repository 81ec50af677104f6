package org.twinrig.workbench;

import java.io.IOException;
import java.util.List;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.StudyText;
import org.twinrig.workbench.view.Frame;
import org.twinrig.workbench.view.TextView;

/**
 * The whole of study.yaml as a text, for every key that has no field of its own. What the reader
 * refuses is shown with its line and is not written.
 */
final class TextPages {
  private final Book book;
  private final Pages pages;

  TextPages(Book book, Pages pages) {
    this.book = book;
    this.pages = pages;
  }

  Answer text(Ask ask) throws IOException {
    Leaf leaf = book.leaf(); // before the text: a page that is older than it is refused later
    return Answer.page(pages.fill("text.jte", view(leaf, book.yaml().text(), List.of())));
  }

  Answer change(Ask ask) throws Exception {
    String before = book.yaml().text();
    String sent = ask.raw("text").replace("\r\n", "\n");
    try {
      book.settle(
          ask.number("revision"),
          new StudyText(asBefore(before, sent)),
          "The text of study.yaml was edited.");
      return Answer.seeOther("./study");
    } catch (UnusableInput e) {
      List<String> lines = sent.lines().toList();
      List<TextView.Complaint> complaints =
          e.problems().stream().map(p -> complaint(p, book.yamlName(), lines)).toList();
      return Answer.page(400, pages.fill("text.jte", view(book.leaf(), sent, complaints)));
    }
  }

  /** A browser sends its own line ends; the file keeps those it has. */
  private static String asBefore(String before, String sent) {
    if (before.replace("\r\n", "\n").equals(sent)) {
      return before;
    }
    return before.contains("\r\n") ? sent.replace("\n", "\r\n") : sent;
  }

  private static TextView.Complaint complaint(Problem p, String yaml, List<String> lines) {
    boolean here = p.source().equals(yaml) && p.line() >= 1 && p.line() <= lines.size();
    return here
        ? new TextView.Complaint(p.text(), p.line(), lines.get(p.line() - 1))
        : new TextView.Complaint(p.text(), 0, "");
  }

  private TextView view(Leaf leaf, String text, List<TextView.Complaint> complaints)
      throws IOException {
    return new TextView(
        pages.frame(book, leaf, Frame.Part.SETTINGS, "Text of study.yaml", "./settings-text"),
        text,
        complaints);
  }
}
