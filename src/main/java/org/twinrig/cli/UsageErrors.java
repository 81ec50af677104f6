package org.twinrig.cli;

import static java.util.regex.Matcher.quoteReplacement;

import java.io.PrintWriter;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.twinrig.intake.NearestName;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says what is wrong with a command line in one sentence, and where help is. */
final class UsageErrors implements CommandLine.IParameterExceptionHandler {
  @Override
  public int handleParseException(ParameterException failure, String[] arguments) {
    CommandLine line = failure.getCommandLine();
    CommandSpec spec = line.getCommandSpec();
    PrintWriter err = line.getErr();
    err.println(sentence(failure, spec));
    err.println("See `" + called(spec) + " --help`.");
    err.flush();
    return CommandLine.ExitCode.USAGE;
  }

  /** What the library says of all else is a sentence already. */
  private static String sentence(ParameterException failure, CommandSpec spec) {
    List<String> unmatched = failure.getCommandLine().getUnmatchedArguments();
    Optional<String> option = unmatched.stream().filter(a -> a.startsWith("-")).findFirst();
    // A misspelt option may be the one that is missing, so it is told first.
    if (option.isPresent()) {
      return noOption(option.get().replaceFirst("=.*", ""), spec);
    }
    if (unmatched.isEmpty() || !(failure instanceof UnmatchedArgumentException)) {
      return failure.getMessage();
    }
    String argument = unmatched.get(0);
    return spec.subcommands().isEmpty()
        ? "`%s` is one argument too many for `%s`; put quotes around a name that holds a blank"
            .formatted(argument, spec.name())
        : "there is no command `" + argument + "`" + guess(argument, spec.subcommands().keySet());
  }

  private static String noOption(String name, CommandSpec spec) {
    List<String> options =
        spec.options().stream()
            .filter(o -> !o.hidden())
            .map(CommandLine.Model.OptionSpec::longestName)
            .toList();
    return "`" + name + "` is no option of `" + spec.name() + "`" + guess(name, options);
  }

  /** The name that is nearest by its letters, if one is near. */
  private static String guess(String written, Collection<String> known) {
    return NearestName.among(written, known)
        .map(name -> "; did you mean `" + name + "`?")
        .orElse("");
  }

  private static String called(CommandSpec spec) {
    return spec.qualifiedName().replaceFirst("twinrig", quoteReplacement(TwinrigCommand.called()));
  }
}
