package org.twinrig.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.twinrig.intake.CaptureFile;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.CatalogueWords;
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

  @Option(names = "--resume", description = "Go on with what a run that was stopped has left.")
  private boolean resume;

  @Option(
      names = "--part",
      paramLabel = "K/N",
      converter = CataloguePart.Converter.class,
      description = "Take the K-th of N parts of the catalogue, to split it over N machines.")
  private CataloguePart part = CataloguePart.WHOLE;

  @Option(
      names = "--strict",
      description = "Stop when any graph is refused, instead of going on without it.")
  private boolean strict;

  @Option(names = "--json", description = "Print what was found as JSON.")
  private boolean json;

  @Mixin private CommonOptions common;

  /** For the command-line library. */
  TranslateCommand() {}

  @Override
  public CommonOptions common() {
    return common;
  }

  @Override
  public Integer call() throws UnusableInput, CannotWrite {
    checkOptions();
    List<Path> places = new ArrayList<>(List.of(study));
    places.addAll(then);
    Legs legs = withSubtract(Legs.read(places, new StudySteps.Way(strict, reverse), common));
    if (what.reference != null) {
      new ReferenceSteps(legs.last(), common).run(what.reference, kind, out);
      return 0;
    }
    CatalogueWords words =
        new CatalogueSteps(legs, "translate", common)
            .run(what.catalogue, out, new CatalogueSteps.Choices(strict, figures, resume, part));
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
        what.reference != null && (!then.isEmpty() || figures || resume || json),
        "--reference goes without --then, --figures, --resume and --json");
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
