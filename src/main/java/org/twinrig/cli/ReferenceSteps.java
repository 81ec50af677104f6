package org.twinrig.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.twinrig.intake.CaptureFile;
import org.twinrig.intake.NearestName;
import org.twinrig.intake.Reading;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.reliability.Mark;
import org.twinrig.report.ReferenceFolder;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.RunRecord;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.TranslatedReference;
import org.twinrig.translation.Translation;

/** Re-expresses one reference curve: reads it, applies a kind's mean transfer, writes it. */
final class ReferenceSteps {
  private final Translation translation;
  private final CommonOptions common;
  private final RunRecord record = new RunRecord(Version.text(), "translate");

  ReferenceSteps(Translation translation, CommonOptions common) {
    this.translation = translation;
    this.common = common;
  }

  void run(Path file, String kindName, ResultFolder out) throws UnusableInput {
    TransferFunction kind = kind(kindName);
    Reading reading = CaptureFile.read(file, file.toString());
    reading.notes().forEach(n -> common.remark(n.text()));
    TranslatedReference reference = TranslatedReference.of(reading.response(), kind, translation);
    if (reference.rows().stream().allMatch(r -> r.fromDb().isEmpty())) {
      throw new UnusableInput(
          Problem.fatal(
              file.toString(),
              0,
              "the curve covers no band of the study",
              "give a curve that reaches from low to high frequencies, its points no further apart than"
                  + " 1/3 octave"));
    }
    record.lap("translate");
    out.write(
        folder -> {
          ReferenceFolder.write(folder, reference, translation, record);
          return folder;
        });
    common
        .out()
        .println(
            "Re-expressed with the mean transfer of `"
                + kind.kind()
                + "` ("
                + Numbers.count(kind.units(), "unit", "units")
                + "): "
                + Numbers.fixed(reference.octaves(Mark.RELIABLE), 1)
                + " octaves reliable, "
                + Numbers.fixed(reference.octaves(Mark.CAUTION), 1)
                + " caution, "
                + Numbers.fixed(reference.octaves(Mark.UNRELIABLE), 1)
                + " unreliable.");
    common.out().println("Table: " + out.target().resolve("reference.csv"));
    common.out().println("Figure: " + out.target().resolve("reference.svg"));
  }

  private TransferFunction kind(String name) throws UnusableInput {
    List<String> kinds = translation.kinds().stream().map(TransferFunction::kind).toList();
    if (name == null && kinds.size() == 1) {
      return translation.kinds().get(0);
    }
    Optional<TransferFunction> found = name == null ? Optional.empty() : translation.kind(name);
    if (found.isEmpty()) {
      String guess =
          name == null
              ? ""
              : NearestName.among(name, kinds).map(n -> "did you mean `" + n + "`? ").orElse("");
      throw new UnusableInput(
          Problem.fatal(
              "--kind",
              0,
              name == null
                  ? "a reference needs the kind whose mean transfer is to be applied"
                  : "the study has no kind `" + name + "`",
              guess + "kinds of the study: " + String.join(", ", kinds)));
    }
    return found.get();
  }
}
