package org.twinrig.workbench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.internal.AsideFile;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.ExampleChoice;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import org.twinrig.report.RunRecord;
import org.twinrig.report.StudyRun;
import org.twinrig.report.html.ExplainPage;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.workbench.view.Frame;
import org.twinrig.workbench.view.ReportView;

/** The written report and the page for readers: made as the command line makes them, and shown. */
final class ReportPages {
  private final Book book;
  private final Pages pages;
  private final Works works;
  private final Workbench.Options options;
  private volatile List<String> remarks = List.of();

  ReportPages(Book book, Pages pages, Works works, Workbench.Options options) {
    this.book = book;
    this.pages = pages;
    this.works = works;
    this.options = options;
  }

  Answer report(Ask ask) throws IOException {
    Leaf leaf = book.leaf();
    return Answer.page(
        pages.fill(
            "report.jte",
            new ReportView(
                pages.frame(book, leaf, Frame.Part.REPORT, "Report", "./report"),
                sheet(written().report(), leaf),
                sheet(written().explained(), leaf),
                remarks)));
  }

  private static ReportView.Sheet sheet(WrittenPage page, Leaf leaf) throws IOException {
    Optional<String> html = page.html();
    return new ReportView.Sheet(
        page.place().toString(),
        html.isPresent(),
        html.isPresent() && html.get().contains(leaf.fingerprint().shortText()));
  }

  /** A run that was stopped may have left earlier results beside their place. */
  private Written written() throws IOException {
    Written written = Written.of(book.leaf().study().folder());
    ResultFolder.bringBack(written.results(), back -> remarks = List.of(back));
    return written;
  }

  Answer showReport(Ask ask) throws IOException {
    return shown(written().report(), ask);
  }

  Answer showExplained(Ask ask) throws IOException {
    return shown(written().explained(), ask);
  }

  private Answer shown(WrittenPage page, Ask ask) throws IOException {
    return page.html()
        .map(html -> WrittenPage.answer(html, page.name(), ask.fields().containsKey("download")))
        .orElseGet(() -> Answer.seeOther("./report"));
  }

  Answer makeReport(Ask ask) throws IOException, UnusableInput {
    Leaf leaf = book.leaf();
    Path place = written().results();
    Work work = works.begin("Writing the report", "./report", w -> write(leaf, place, w));
    return Answer.seeOther("./work?id=" + work.id());
  }

  Answer makeExplained(Ask ask) throws IOException, UnusableInput {
    Leaf leaf = book.leaf();
    WrittenPage page = written().explained();
    Work work =
        works.begin("Writing the page for readers", "./report", w -> explain(leaf, page, w));
    return Answer.seeOther("./work?id=" + work.id());
  }

  private void write(Leaf leaf, Path place, Work work) throws UnusableInput {
    StudyRun run = new StudyRun(leaf.study(), leaf.fingerprint(), leaf.outcome(), leaf.problems());
    run.found();
    List<String> told = new ArrayList<>();
    ResultFolder.at(
            place,
            ResultFolder.Kind.STUDY,
            RunInputs.of(leaf.study()),
            new ResultFolder.Host(
                "write the results elsewhere with `study --out`", options.threads(), told::add))
        .write(
            folder -> {
              run.write(folder, new RunRecord(options.version(), "workbench"), options.threads());
              work.stopIfCancelled();
              return folder;
            });
    remarks = List.copyOf(told);
  }

  private void explain(Leaf leaf, WrittenPage page, Work work) throws UnusableInput {
    StudyOutcome outcome = leaf.outcome().orElseThrow(() -> new UnusableInput(leaf.problems()));
    try {
      if (Files.exists(page.place(), LinkOption.NOFOLLOW_LINKS) && page.html().isEmpty()) {
        throw refused(
            page.place(),
            "is not known to be a page of twinrig that nobody changed",
            "move it away");
      }
      Findings<Optional<TranslatedGraph>> example =
          new ExampleChoice(outcome, options.threads()).graph();
      String html = ExplainPage.html(outcome, example.value());
      work.stopIfCancelled();
      AsideFile.replace(
          page.place(), file -> Files.writeString(file, html, StandardCharsets.UTF_8));
      // A catalogue that cannot be read costs the page its example only.
      remarks =
          example.problems().stream()
              .filter(p -> p.kind() != Problem.Kind.NOTE)
              .map(Problem::text)
              .toList();
    } catch (IOException e) {
      throw refused(
          page.place(),
          "the page could not be written (" + e.getMessage() + ")",
          "make room, or check the folder's permissions; an earlier page is untouched");
    }
  }

  private static UnusableInput refused(Path place, String what, String remedy) {
    return new UnusableInput(Problem.fatal(place.toString(), 0, what, remedy));
  }
}
