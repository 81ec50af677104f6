package org.twinrig.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.twinrig.intake.CaptureFile;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.CatalogueWords;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import org.twinrig.response.Smoothing;
import org.twinrig.study.ReferenceCurve;
import picocli.CommandLine;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code twinrig translate}: re-expresses a back catalogue, or a reference curve. */
@Command(
    name = "translate",
    mixinStandardHelpOptions = true,
    description = "Re-expresses a back catalogue as if it had been measured on the new fixture.")
final class TranslateCommand implements Callable<Integer>, WithCommonOptions {

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Parameters(
      paramLabel = "STUDY_DIR_OR_translation.json",
      description = "A study's folder, or the translation.json it wrote.")
  private Path study;

  @ArgGroup(multiplicity = "1")
  private What what;

  /** What is to be re-expressed. */
  static final class What {
    @Option(
        names = "--catalogue",
        paramLabel = "FILE",
        required = true,
        description = "The catalogue.csv that lists the old graphs.")
    private Path catalogue;

    @Option(
        names = "--reference",
        paramLabel = "FILE",
        required = true,
        description = "A reference curve of the old fixture, instead of a catalogue.")
    private Path reference;

    /** For the command-line library. */
    What() {}
  }

  @Option(
      names = "--kind",
      paramLabel = "KIND",
      description = "With --reference: the kind whose mean transfer is applied.")
  private String kind;

  @Option(names = "--out", paramLabel = "DIR", required = true, description = "Where results go.")
  private Path out;

  @Option(
      names = "--then",
      paramLabel = "STUDY",
      description =
          "A further study, or its translation.json, that starts on the fixture the one before it"
              + " ends on. May be given several times.")
  private List<Path> then = List.of();

  @Option(
      names = "--reverse",
      description =
          "Read the study the other way, from its new fixture to its old one; fitted anew.")
  private boolean reverse;

  @Option(
      names = "--subtract",
      paramLabel = "FILE",
      description = "The new fixture's reference curve, subtracted from compensated graphs again.")
  private Path subtract;

  @Option(
      names = "--subtract-smoothing",
      paramLabel = "1/N",
      description = "What the curve of --subtract is smoothed by: none, or 1/1 to 1/48.")
  private String subtractSmoothing;

  @Option(names = "--figures", description = "Also draw every graph, into the folder figures.")
  private boolean figures;

  @Option(
      names = "--strict",
      description = "Stop when any graph is refused, instead of going on without it.")
  private boolean strict;

  @Option(names = "--json", description = "Print what was found as JSON.")
  private boolean json;

  @Mixin private DataRoots dataRoots;

  @Mixin private CommonOptions common;

  /** For the command-line library. */
  TranslateCommand() {}

  @Override
  public CommonOptions common() {
    return common;
  }

  @Override
  public Integer call() throws UnusableInput {
    checkOptions();
    List<Path> places = new ArrayList<>(List.of(study));
    places.addAll(then);
    Legs.Declared declared =
        Legs.Declared.of(places, new StudySteps.Way(strict, reverse, dataRoots.folders()), common);
    RunInputs inputs =
        subtract == null ? declared.inputs() : declared.inputs().and(RunInputs.of(subtract));
    if (what.reference != null) {
      ResultFolder place =
          common.results(
              out, ResultFolder.Kind.REFERENCE, inputs.and(RunInputs.of(what.reference)));
      new ReferenceSteps(declared.analyse().last(), common).run(what.reference, kind, place);
      return 0;
    }
    CatalogueSteps.Listed listed = CatalogueSteps.Listed.of(what.catalogue);
    ResultFolder place =
        common.results(out, ResultFolder.Kind.CATALOGUE, inputs.and(listed.inputs()));
    CatalogueWords words =
        new CatalogueSteps(withSubtract(declared.analyse()), "translate", common)
            .run(listed, place, new CatalogueSteps.Choices(strict, figures));
    if (json) {
      common.json(words.json());
    } else {
      words.sentences().forEach(common.out()::println);
    }
    return 0;
  }

  private void checkOptions() {
    refuse(
        what.reference == null && kind != null,
        "--kind belongs to --reference; a catalogue names the kind of every graph");
    refuse(
        what.reference != null && (!then.isEmpty() || figures || json),
        "--reference goes without --then, --figures and --json");
    refuse(what.reference != null && subtract != null, "--reference goes without --subtract");
    refuse(
        reverse && !then.isEmpty(),
        "--reverse goes without --then; run the reversed studies one after the other");
    refuse(
        subtract == null && subtractSmoothing != null,
        "--subtract-smoothing needs the curve of --subtract");
  }

  private void refuse(boolean wrong, String text) {
    if (wrong) {
      throw new CommandLine.ParameterException(spec.commandLine(), text);
    }
  }

  private Legs withSubtract(Legs legs) throws UnusableInput {
    if (subtract == null) {
      return legs;
    }
    Optional<Smoothing> smoothing = Optional.ofNullable(subtractSmoothing).flatMap(Smoothing::of);
    refuse(
        subtractSmoothing != null && smoothing.isEmpty(),
        "--subtract-smoothing is `" + subtractSmoothing + "`; " + Smoothing.FORM);
    ReferenceCurve curve =
        new ReferenceCurve(
            String.valueOf(subtract.getFileName()),
            smoothing,
            CaptureFile.read(subtract, subtract.toString()).response());
    return legs.withLastHandling(handling -> handling.withNewReference(curve));
  }
}
