package org.twinrig.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Smoothing;

/** The curves a lab subtracts, as study.yaml names them. */
class ReferencesTest {
  @TempDir private Path folder;
  private LabFolder lab;

  @BeforeEach
  void copy() throws Exception {
    lab = LabFolder.in(folder);
    Files.writeString(lab.study().resolve("plate.csv"), "20,1\n20000,-3\n", StandardCharsets.UTF_8);
  }

  private void append(String yaml) throws Exception {
    Path file = lab.study().resolve("study.yaml");
    Files.writeString(
        file, Files.readString(file) + yaml.replace("\\n", "\n"), StandardCharsets.UTF_8);
  }

  @Test
  void aReferenceComesWithItsSmoothingAndItsFixture() throws Exception {
    append("references:\\n  plate: { file: plate.csv, smoothing: 1/2 }\\n");
    Study study = StudyReader.read(lab.study()).value();
    ReferenceCurve reference = study.reference(study.from()).orElseThrow();
    assertEquals("plate.csv", reference.file());
    assertEquals(Optional.of(new Smoothing(2)), reference.smoothing());
    assertEquals(-3, reference.curve().levelDb(1));
    assertEquals(Optional.empty(), study.reference(study.to()));
    assertEquals(reference, study.reversed().reference(study.reversed().to()).orElseThrow());
    assertEquals(
        "plate.csv",
        study.inputs().get(study.inputs().size() - 1).getFileName().toString(),
        "the fingerprint holds it");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "references:\\n  plat: { file: plate.csv }\\n"
            + "|study.yaml:31: `references.plat` is no fixture of the study; did you mean `plate`?"
            + " fixtures declared here: plate, head",
        "references:\\n  plate: plate.csv\\n"
            + "|study.yaml:31: `references.plate` is `plate.csv`; write a group of keys: file,"
            + " smoothing",
        "references:\\n  plate: { smoothing: none }\\n"
            + "|study.yaml:31: the key `file` is missing in `references.plate`; add"
            + " `file: reference.csv`",
        "references:\\n  plate: { file: plat.csv }\\n"
            + "|study.yaml:31: `references.plate.file`: there is no file `plat.csv`; did you mean"
            + " `plate.csv`? names are relative to the folder of the file that names them",
        "references:\\n  plate: { file: ../../../plate.csv }\\n"
            + "|study.yaml:31: `references.plate.file`: `../../../plate.csv` leaves the data root;"
            + " name a file inside it, or widen `data_root` in study.yaml",
        "references:\\n  plate: { file: plate.csv, smoothing: 1/3 oct }\\n"
            + "|study.yaml:31: `references.plate.smoothing` is `1/3 oct`; write `none`, or a part"
            + " of an octave from `1/1` to `1/48`, with ` db` behind it where decibels were averaged"
            + " and not powers: `1/6 db`",
      })
  void aFaultIsNamedWithItsPlaceAndRemedy(String yaml, String message) throws Exception {
    append(yaml);
    UnusableInput refused = assertThrows(UnusableInput.class, () -> StudyReader.read(lab.study()));
    assertEquals(List.of(message), refused.problems().stream().map(Problem::text).toList());
  }
}
