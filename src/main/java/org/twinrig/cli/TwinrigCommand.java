package org.twinrig.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.twinrig.internal.Printable;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.Report;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import org.twinrig.report.RunRecord;
import picocli.CommandLine;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;

/** What all commands share: their common options, and how they tell what they did. */
@CommandLine.Command(mixinStandardHelpOptions = true)
abstract class TwinrigCommand implements Callable<Integer> {

  /** Set by the launcher when standard error is a terminal. */
  private static final String TERMINAL = "twinrig.terminal";

  /** Set by the launcher: what was typed to start it. */
  private static final String CALLED = "twinrig.called";

  private static final int MOST_NOTES = 5;

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Option(names = "--quiet", description = "Print results and errors only, no progress.")
  private boolean quiet;

  @Option(names = "--debug", description = "On a failure, print where in the program it happened.")
  private boolean debug;

  private int threads = Runtime.getRuntime().availableProcessors();

  @Option(
      names = "--threads",
      paramLabel = "N",
      description =
          "How many threads to work on (default: one per processor). Results are the same.")
  final void setThreads(int value) {
    refuse(value < 1, "--threads must be 1 or more, but is " + value);
    threads = value;
  }

  final boolean debug() {
    return debug;
  }

  final int threads() {
    return threads;
  }

  /** The day on the clock of whoever runs the program: nothing below the commands looks at it. */
  static LocalDate today() {
    return LocalDate.now(ZoneId.systemDefault());
  }

  final RunRecord record() {
    return new RunRecord(Main.version(), spec.name());
  }

  final ParameterException wrong(String what) {
    return new ParameterException(spec.commandLine(), what);
  }

  final void refuse(boolean isWrong, String what) {
    if (isWrong) {
      throw wrong(what);
    }
  }

  /** A folder for results of a run that reads some inputs, looked at before any work is done. */
  final ResultFolder folder(Path target, ResultFolder.Kind kind, RunInputs inputs)
      throws UnusableInput {
    ResultFolder.Host host =
        new ResultFolder.Host("name another folder with --out", threads, err()::println);
    return ResultFolder.at(target, kind, inputs, host);
  }

  /** The same where results may not be wanted in a folder. */
  final Optional<ResultFolder> wanted(Path target, ResultFolder.Kind kind, RunInputs inputs)
      throws UnusableInput {
    return target == null ? Optional.empty() : Optional.of(folder(target, kind, inputs));
  }

  /** Writes a report where a folder is wanted, and prints it. */
  final void give(Report report, Optional<ResultFolder> place, RunRecord record, boolean json)
      throws UnusableInput {
    if (place.isPresent()) {
      place
          .get()
          .write(
              folder -> {
                report.write(folder, record, threads);
                return folder;
              });
    }
    print(report, place.map(ResultFolder::target), json);
  }

  final void print(Report report, Optional<Path> results, boolean json) {
    if (json) {
      // What a terminal cannot show is escaped, not lost.
      out().println(Printable.json(report.json(results)));
    } else {
      report.sentences(results).forEach(out()::println);
    }
  }

  /** Refuses a file or folder among results, which could not be replaced with it in them. */
  static void refuseAmongResults(Path place) throws UnusableInput {
    Optional<Path> results;
    try {
      results = ResultFolder.resultsAbove(place);
    } catch (IOException e) {
      throw cannot(place, "could not be looked at", e);
    }
    if (results.isPresent()) {
      throw unusable(
          place,
          "lies inside `" + results.get() + "`, which holds results of twinrig",
          "name another place with --out");
    }
  }

  /** A place that cannot be used, why, and what to do. */
  static UnusableInput unusable(Path place, String what, String remedy) {
    return UnusableInput.fatal(place.toString(), 0, what, remedy);
  }

  static UnusableInput cannot(Path place, String what, IOException e) {
    return unusable(place, what + " (" + e.getMessage() + ")", "make room or change permissions");
  }

  static String called() {
    return System.getProperty(CALLED, "twinrig");
  }

  final PrintWriter out() {
    return spec.commandLine().getOut();
  }

  final PrintWriter err() {
    return spec.commandLine().getErr();
  }

  final void refusals(List<Problem> problems) {
    problems.stream()
        .filter(p -> p.kind() == Problem.Kind.REFUSED)
        .forEach(p -> err().println(p.text()));
  }

  /** Says how the lab's own tables were taken; what is beyond a few lines stands in the report. */
  final void notes(List<Problem> problems) {
    List<Problem> notes = problems.stream().filter(p -> p.kind() == Problem.Kind.NOTE).toList();
    notes.stream().limit(MOST_NOTES).forEach(p -> remark("Note: " + p.text()));
    if (notes.size() > MOST_NOTES) {
      remark("Notes on " + (notes.size() - MOST_NOTES) + " more stand in the report.");
    }
  }

  /** Says what is being done, to a person who is watching. */
  final void progress(String what) {
    if (Boolean.getBoolean(TERMINAL)) {
      remark(what);
    }
  }

  /** Says something beside the results, also where nobody is watching. */
  final void remark(String what) {
    if (!quiet) {
      err().println(what);
    }
  }
}
