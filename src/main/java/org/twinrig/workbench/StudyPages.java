package org.twinrig.workbench;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.twinrig.problem.Problem;
import org.twinrig.report.StudyRun;
import org.twinrig.workbench.view.Frame;
import org.twinrig.workbench.view.Link;
import org.twinrig.workbench.view.StudyLeafView;

/** How the study stands, what the last change did, and the way back. */
final class StudyPages {
  private final Book book;
  private final Pages pages;
  private final Drawings drawings;

  StudyPages(Book book, Pages pages, Drawings drawings) {
    this.book = book;
    this.pages = pages;
    this.drawings = drawings;
  }

  Answer study(Ask ask) throws IOException {
    Leaf leaf = book.leaf();
    return Answer.page(
        pages.fill(
            "study.jte",
            new StudyLeafView(
                pages.frame(book, leaf, Frame.Part.STUDY, "The study", "./study"),
                leaf.outcome().map(StudyRun::sentences).orElse(List.of()),
                change(leaf),
                leaf.outcome().stream()
                    .flatMap(o -> o.kinds().stream())
                    .map(
                        k ->
                            new StudyLeafView.Kind(
                                k.kind(),
                                drawings.transfer(leaf, k),
                                new Link(
                                    "Why its bands are marked",
                                    "./zones?kind=" + Pages.query(k.kind()))))
                    .toList(),
                leaf.problems().stream().map(Problem::text).toList())));
  }

  private static Optional<StudyLeafView.Change> change(Leaf leaf) {
    if (leaf.before().isEmpty() || leaf.outcome().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new StudyLeafView.Change(
            leaf.what(),
            Difference.between(leaf.before().get(), leaf.outcome().get()),
            "No kind's transfer or marks moved."));
  }

  Answer undo(Ask ask) throws Exception {
    book.undo(ask.number("revision"));
    String back = ask.text("back");
    // Only to a page of our own: a path and a query of plain letters, never another host.
    boolean own = back.matches("[.]/[a-z-]*([?][A-Za-z0-9._~%+=&*-]*)?");
    return Answer.seeOther(own ? back : "./");
  }

  Answer reload(Ask ask) throws Exception {
    book.reload();
    return Answer.seeOther("./");
  }
}
