package org.twinrig.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.twinrig.internal.Printable;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import picocli.CommandLine;
import picocli.CommandLine.Option;

/** Options of every command. */
final class CommonOptions {

  /** Set by the launcher when standard error is a terminal. */
  private static final String TERMINAL = "twinrig.terminal";

  /** Set by the launcher: what was typed to start it. */
  private static final String CALLED = "twinrig.called";

  private static final int MOST_NOTES = 5;

  @CommandLine.Spec(CommandLine.Spec.Target.MIXEE)
  private CommandLine.Model.CommandSpec spec;

  @Option(names = "--quiet", description = "Print results and errors only, no progress.")
  private boolean quiet;

  @Option(names = "--debug", description = "On a failure, print where in the program it happened.")
  private boolean debug;

  private int threads = Runtime.getRuntime().availableProcessors();

  /** For the command-line library. */
  CommonOptions() {}

  @Option(
      names = "--threads",
      paramLabel = "N",
      description =
          "How many threads to work on (default: one per processor). Results are the same.")
  void setThreads(int value) {
    if (value < 1) {
      throw new CommandLine.ParameterException(
          spec.commandLine(), "--threads must be 1 or more, but is " + value);
    }
    threads = value;
  }

  boolean debug() {
    return debug;
  }

  int threads() {
    return threads;
  }

  /**
   * A folder for results, looked at before any work is done.
   *
   * @param inputs what the run reads
   */
  ResultFolder results(Path target, ResultFolder.Kind kind, RunInputs inputs) throws UnusableInput {
    ResultFolder.Host host =
        new ResultFolder.Host("name another folder with --out", threads, err()::println);
    return ResultFolder.at(target, kind, inputs, host);
  }

  /** Refuses a file or folder among results, which could not be replaced with it in them. */
  static void refuseAmongResults(Path place) throws CannotWrite {
    Optional<Path> results;
    try {
      results = ResultFolder.resultsAbove(place);
    } catch (IOException e) {
      throw new CannotWrite(place + ": could not be looked at (" + e.getMessage() + ")", e);
    }
    if (results.isPresent()) {
      throw new CannotWrite(
          place
              + ": lies inside `"
              + results.get()
              + "`, which holds results of twinrig; name another place with --out",
          null);
    }
  }

  /** What to type to start the program again. */
  static String called() {
    return System.getProperty(CALLED, "twinrig");
  }

  /** Where results go. */
  PrintWriter out() {
    return spec.commandLine().getOut();
  }

  /** Prints a JSON text; what a terminal cannot show is escaped in it, not lost. */
  void json(String text) {
    out().println(Printable.json(text));
  }

  /** Where errors go. */
  PrintWriter err() {
    return spec.commandLine().getErr();
  }

  /** Says what was left out, and why. */
  void refusals(List<Problem> problems) {
    problems.stream()
        .filter(p -> p.kind() == Problem.Kind.REFUSED)
        .forEach(p -> err().println(p.text()));
  }

  /** Says how the lab's own tables were taken; what is beyond a few lines stands in the report. */
  void notes(List<Problem> problems) {
    List<Problem> notes = problems.stream().filter(p -> p.kind() == Problem.Kind.NOTE).toList();
    notes.stream().limit(MOST_NOTES).forEach(p -> remark("Note: " + p.text()));
    if (notes.size() > MOST_NOTES) {
      remark("Notes on " + (notes.size() - MOST_NOTES) + " more stand in the report.");
    }
  }

  /** Says what is being done, to a person who is watching. */
  void progress(String what) {
    if (!quiet && Boolean.getBoolean(TERMINAL)) {
      err().println(what);
    }
  }

  /** Says something beside the results, also where nobody is watching. */
  void remark(String what) {
    if (!quiet) {
      err().println(what);
    }
  }
}
