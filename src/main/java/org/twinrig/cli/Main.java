package org.twinrig.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import org.twinrig.problem.UnusableInput;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The program. */
@Command(
    name = "twinrig",
    description = {
      "Re-expresses headphone graphs measured on one fixture as if measured on another,"
          + " and says where that must not be done."
    },
    subcommands = {
      DemoCommand.class,
      StudyCommand.class,
      WorkbenchCommand.class,
      TranslateCommand.class,
      ExplainCommand.class,
      InspectCommand.class,
      GatherCommand.class,
      SimulateCommand.class,
      PlanCommand.class,
      CompareCommand.class
    },
    mixinStandardHelpOptions = true,
    synopsisSubcommandLabel = "COMMAND",
    footer = {
      "",
      "Exit status: 0 done, 1 the input cannot give a result (the message says which file, line and"
          + " why) or standard output cannot be written, 2 wrong usage."
    })
public final class Main implements Runnable {

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  /** Runs a command and ends the process with its exit status. */
  public static void main(String[] arguments) {
    PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    int status = run(out, err, arguments);
    out.flush();
    err.flush();
    // Ends at once: idle drawing threads need not be waited for.
    Runtime.getRuntime().halt(status);
  }

  /** Runs a command as the user typed it, and gives its exit status. */
  public static int run(PrintWriter out, PrintWriter err, String... arguments) {
    PrintWriter shown = Shown.on(out);
    int status = execute(shown, Shown.on(err), arguments);
    if (shown.checkError()) {
      err.println(
          "twinrig: not everything could be written to standard output: its disk is full, or the"
              + " program that reads it has ended; files that were written are whole");
      return CommandLine.ExitCode.SOFTWARE;
    }
    return status;
  }

  private static int execute(PrintWriter out, PrintWriter err, String... arguments) {
    CommandLine line = new CommandLine(new Main());
    line.setOut(out);
    line.setErr(err);
    line.setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
    line.registerConverter(Path.class, Main::path);
    line.registerConverter(PagePlace.class, PagePlace::of);
    line.getCommandSpec().versionProvider(() -> new String[] {"twinrig " + version()});
    line.setUsageHelpAutoWidth(false);
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setExecutionExceptionHandler(Main::explain);
    line.setParameterExceptionHandler(new UsageErrors());
    try {
      return line.execute(arguments);
    } catch (OutOfMemoryError e) {
      err.println(
          """
          twinrig: the memory Java may use (%s MB) is not enough for this; give it more, for \
          example with TWINRIG_JAVA_OPTIONS=-Xmx2g; earlier results are untouched"""
              .formatted(Runtime.getRuntime().maxMemory() >> 20));
      return CommandLine.ExitCode.SOFTWARE;
    }
  }

  @Override
  public void run() {
    spec.commandLine().usage(spec.commandLine().getOut());
  }

  static String version() {
    String version = Main.class.getPackage().getImplementationVersion();
    return version == null ? "(not from a jar)" : version;
  }

  /** A name of a file or folder; an empty one would be the current folder. */
  static Path path(String text) {
    if (text.isBlank()) {
      throw new CommandLine.TypeConversionException("the name of a file or folder is empty");
    }
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw new CommandLine.TypeConversionException(
          "`" + text + "` cannot be the name of a file here");
    }
  }

  private static int explain(
      Exception failure, CommandLine line, CommandLine.ParseResult arguments) {
    PrintWriter err = line.getErr();
    if (failure instanceof UnusableInput unusable) {
      unusable.problems().forEach(p -> err.println(p.text()));
    } else {
      err.println(
          "twinrig: this should not have happened and is a fault of the program: "
              + failure.getClass().getSimpleName()
              + (failure.getMessage() == null ? "" : ": " + failure.getMessage()));
      err.println("Run the same command with --debug to see where, and report it with its output.");
    }
    if (line.getCommand() instanceof TwinrigCommand command && command.debug()) {
      failure.printStackTrace(err);
    }
    err.flush();
    return CommandLine.ExitCode.SOFTWARE;
  }
}
