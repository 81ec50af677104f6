package org.twinrig.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.doubt.Doubt;
import org.twinrig.intake.CaptureFile;
import org.twinrig.intake.NearestName;
import org.twinrig.intake.Reading;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Findings;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.CatalogueReport;
import org.twinrig.report.ReferenceReport;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunInputs;
import org.twinrig.report.RunRecord;
import org.twinrig.response.Smoothing;
import org.twinrig.study.ReferenceCurve;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.Chain;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.TranslatedReference;
import org.twinrig.translation.Translation;
import org.twinrig.translation.TranslationFile;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code twinrig translate}: re-expresses a back catalogue, or a reference curve. */
@Command(
    name = "translate",
    description = "Re-expresses a back catalogue as if it had been measured on the new fixture.")
final class TranslateCommand extends TwinrigCommand {
  @Parameters(
      paramLabel = "STUDY_DIR_OR_translation.json",
      description = "A study's folder, or the translation.json it wrote.")
  private Path study;

  @ArgGroup(multiplicity = "1")
  private What what;

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
      description =
          "What the curve of --subtract is smoothed by: none, 1/1 to 1/48, or in decibels '1/6 db'.")
  private String subtractSmoothing;

  @Option(names = "--figures", description = "Also draw every graph, into the folder figures.")
  private boolean figures;

  @Option(
      names = "--on",
      paramLabel = "DAY",
      description =
          "The day to hold a study's valid_until against, such as 2027-03-31 (default: today).")
  private LocalDate day;

  @Option(
      names = "--strict",
      description = "Stop when any graph is refused, instead of going on without it.")
  private boolean strict;

  @Option(names = "--json", description = "Print what was found as JSON.")
  private boolean json;

  @Mixin private DataRoots dataRoots;

  @Override
  public Integer call() throws UnusableInput {
    checkOptions();
    List<Path> places = new ArrayList<>(List.of(study));
    places.addAll(then);
    List<Optional<DeclaredStudy>> declared = new ArrayList<>();
    RunInputs inputs = subtract == null ? RunInputs.of() : RunInputs.of(subtract);
    for (Path place : places) {
      Optional<DeclaredStudy> one = declared(place);
      declared.add(one);
      inputs = inputs.and(one.map(d -> RunInputs.of(d.study())).orElse(RunInputs.of(place)));
    }
    if (what.reference != null) {
      ResultFolder place =
          folder(out, ResultFolder.Kind.REFERENCE, inputs.and(RunInputs.of(what.reference)));
      reexpressReference(analysed(places, declared).last(), place);
      return 0;
    }
    Path table = what.catalogue;
    Findings<CatalogueReader.Catalogue> catalogue = CatalogueReader.read(table, table.toString());
    ResultFolder place =
        folder(
            out,
            ResultFolder.Kind.CATALOGUE,
            inputs.and(RunInputs.ofCatalogue(table, catalogue.value())));
    Chain chain = withSubtract(analysed(places, declared));
    CatalogueReport report =
        new CatalogueTranslation(this, chain, strict, figures, used())
            .into(place, table, catalogue);
    print(report, Optional.of(out), json);
    return 0;
  }

  private LocalDate used() {
    return day == null ? today() : day;
  }

  /** A study of the chain; nothing where a place is a translation file and no folder. */
  private Optional<DeclaredStudy> declared(Path place) throws UnusableInput {
    if (Files.isDirectory(place)) {
      DeclaredStudy declared = DeclaredStudy.of(place, dataRoots.folders, this);
      return Optional.of(reverse ? declared.reversed() : declared);
    }
    if (reverse) {
      throw unusable(
          place,
          "a translation file cannot be read the other way: the reverse is fitted anew from the captures",
          "give the study's folder with --reverse");
    }
    try {
      // A run that was stopped may have left the results with the file beside their place.
      ResultFolder.bringBack(place.toAbsolutePath().resolveSibling(""), err()::println);
    } catch (IOException e) {
      throw unusable(
          place,
          "earlier results could not be put back (" + e.getMessage() + ")",
          "check the permissions of the folder they lie in");
    }
    return Optional.empty();
  }

  private Chain analysed(List<Path> places, List<Optional<DeclaredStudy>> declared)
      throws UnusableInput {
    List<Chain.Link> links = new ArrayList<>();
    for (int k = 0; k < places.size(); k++) {
      Path place = places.get(k);
      links.add(
          declared.get(k).isPresent()
              ? undoubted(declared.get(k).get().analyse(strict).found()).link(threads())
              : Chain.Link.of(TranslationFile.read(place, place.toString())));
    }
    return Chain.of(links, places);
  }

  /** A study whose claims are contradicted gives transfers all the same, which is told. */
  private StudyOutcome undoubted(StudyOutcome study) {
    List<Doubt> open = study.doubts().stream().filter(Doubt::isOpen).toList();
    if (!open.isEmpty()) {
      remark(
          "Note: the study itself has %s (%s): graphs are translated with it as it stands, see its report"
              .formatted(
                  Numbers.count(open.size(), "open doubt", "open doubts"),
                  open.stream()
                      .map(d -> (d.doubt() + " " + d.shortName()).strip())
                      .collect(Collectors.joining(", "))));
    }
    return study;
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

  private Chain withSubtract(Chain chain) throws UnusableInput {
    if (subtract == null) {
      return chain;
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
    return chain.withLastHandling(handling -> handling.withNewReference(curve));
  }

  private void reexpressReference(Translation translation, ResultFolder place)
      throws UnusableInput {
    RunRecord record = record();
    TransferFunction applied = named(translation);
    Path file = what.reference;
    Reading reading = CaptureFile.read(file, file.toString());
    reading.notes().forEach(n -> remark(n.text()));
    TranslatedReference reference =
        TranslatedReference.of(reading.response(), applied, translation);
    if (reference.rows().stream().allMatch(r -> r.fromDb().isEmpty())) {
      throw unusable(
          file,
          "the curve covers no band of the study",
          "give a curve that reaches from low to high frequencies, its points no further apart than"
              + " 1/3 octave");
    }
    translation.origin().validityPassed(used()).ifPresent(doubt -> remark(doubt.sentence()));
    record.lap("translate");
    ReferenceReport report = new ReferenceReport(reference, translation);
    place.write(
        folder -> {
          report.write(folder, record);
          return folder;
        });
    report.sentences(place.target()).forEach(out()::println);
  }

  /** The kind whose mean transfer is applied to a reference curve. */
  private TransferFunction named(Translation translation) throws UnusableInput {
    List<String> kinds = translation.kinds().stream().map(TransferFunction::kind).toList();
    if (kind == null && kinds.size() == 1) {
      return translation.kinds().get(0);
    }
    Optional<String> name = Optional.ofNullable(kind);
    String what =
        kind == null
            ? "a reference needs the kind whose mean transfer is to be applied"
            : "the study has no kind `" + kind + "`";
    String remedy =
        name.map(n -> NearestName.question(n, kinds)).orElse("")
            + "kinds of the study: "
            + String.join(", ", kinds);
    return name.flatMap(translation::kind)
        .orElseThrow(() -> UnusableInput.fatal("--kind", 0, what, remedy));
  }
}
