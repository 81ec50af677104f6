package org.twinrig.workbench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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

/** The written report and the page for readers: made as the command line makes them, and shown. */
public final class ReportPages {
  private final Pages pages;
  private final Workbench.Options options;
  private volatile List<String> remarks = List.of();

  ReportPages(Pages pages, Workbench.Options options) {
    this.pages = pages;
    this.options = options;
  }

  Response report(Request request) throws IOException {
    Frame frame = pages.frame(Frame.Part.REPORT, "Report", "./report");
    State report = state(writtenReport(), frame.snapshot());
    State explained = state(writtenExplanation(), frame.snapshot());
    return Pages.fill(
        "report.jte",
        Map.of("frame", frame, "report", report, "explained", explained, "remarks", remarks));
  }

  /**
   * Where a page is written, whether it was before, and whether it shows the study as it stands.
   */
  public record State(String place, boolean there, boolean fresh) {}

  private static State state(WrittenPage page, Snapshot snapshot) throws IOException {
    Optional<String> html = page.html();
    String fingerprint = snapshot.fingerprint().shortText();
    return new State(
        page.place().toString(),
        html.isPresent(),
        html.filter(text -> text.contains(fingerprint)).isPresent());
  }

  private WrittenPage writtenReport() throws IOException {
    Path results = writtenExplanation().folder().resolve("results");
    // A run that was stopped may have left earlier results beside their place.
    ResultFolder.bringBack(results, back -> remarks = List.of(back));
    return WrittenPage.report(results);
  }

  private WrittenPage writtenExplanation() throws IOException {
    return WrittenPage.explained(pages.session.snapshot().study().folder().toRealPath());
  }

  Response showReport(Request request) throws IOException {
    return shown(writtenReport(), request);
  }

  Response showExplained(Request request) throws IOException {
    return shown(writtenExplanation(), request);
  }

  private static Response shown(WrittenPage page, Request request) throws IOException {
    return page.html()
        .map(html -> page.show(html, request.fields().containsKey("download")))
        .orElseGet(() -> Response.seeOther("./report"));
  }

  Response makeReport(Request request) throws IOException, UnusableInput {
    Snapshot snapshot = pages.session.snapshot();
    Path place = writtenReport().folder();
    return pages.begin("Writing the report", "./report", work -> write(snapshot, place, work));
  }

  Response makeExplained(Request request) throws IOException, UnusableInput {
    Snapshot snapshot = pages.session.snapshot();
    WrittenPage page = writtenExplanation();
    return pages.begin(
        "Writing the page for readers", "./report", work -> explain(snapshot, page, work));
  }

  private void write(Snapshot snapshot, Path place, Work work) throws UnusableInput {
    StudyRun run =
        new StudyRun(
            snapshot.study(), snapshot.fingerprint(), snapshot.outcome(), snapshot.problems());
    run.found();
    List<String> told = new ArrayList<>();
    ResultFolder.at(
            place,
            ResultFolder.Kind.STUDY,
            RunInputs.of(snapshot.study()),
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

  private void explain(Snapshot snapshot, WrittenPage page, Work work) throws UnusableInput {
    StudyOutcome outcome = snapshot.estimated();
    try {
      if (Files.exists(page.place(), LinkOption.NOFOLLOW_LINKS) && page.html().isEmpty()) {
        throw refused(
            page.place(),
            "is not known to be a page of twinrig that nobody changed",
            "move it away");
      }
      Findings<ExampleChoice.Example> example =
          new ExampleChoice(outcome, options.threads()).example();
      String html = ExplainPage.html(outcome, example.value().graph(), example.value().heldBack());
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
    return UnusableInput.fatal(place.toString(), 0, what, remedy);
  }
}
