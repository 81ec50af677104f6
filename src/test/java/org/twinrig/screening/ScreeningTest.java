package org.twinrig.screening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Anchoring;
import org.twinrig.study.CaptureReading;
import org.twinrig.study.ScreeningMode;
import org.twinrig.study.Setting;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;

/** Against the troubles planted in the demonstration's data. */
class ScreeningTest {
  private static Study study;
  private static List<AnchoredCapture> captures;

  @BeforeAll
  static void readOnce() throws UnusableInput {
    study = StudyReader.read(Path.of("studies", "plate-to-head")).value();
    captures =
        Anchoring.of(study.settings(), 2)
            .apply(study.corrected(CaptureReading.read(study, 2).value()))
            .value();
  }

  @Test
  void everyPlantedLostSealIsFoundAndNoOtherIsAccused() throws IOException {
    Set<String> planted = new HashSet<>();
    for (String line :
        Files.readAllLines(
            Path.of("demo-data", "plate-to-head", "truth", "troubles.csv"),
            StandardCharsets.UTF_8)) {
      String[] cells = line.split(",", -1);
      if (cells.length == 6 && cells[4].equals("lost seal") && cells[5].equals("no")) {
        planted.add(String.join("/", cells[0], cells[1], cells[2], cells[3]));
      }
    }
    Set<String> found = new HashSet<>();
    for (Verdict v : Screening.of(study, captures).verdicts()) {
      if (v.finding() == Finding.LOST_SEAL) {
        CaptureEntry c = v.capture();
        found.add(String.join("/", c.unit(), c.fixture(), c.side().name(), "" + c.seating()));
      }
    }
    assertEquals(planted, found);
  }

  @Test
  void suggestingLeavesNothingOut() {
    Study suggesting =
        study.withSettings(study.settings().with(Setting.SCREENING, ScreeningMode.SUGGEST));
    Screening suggested = Screening.of(suggesting, captures);
    long byLab = study.captures().stream().filter(CaptureEntry::excludedByLab).count();
    assertEquals(captures.size() - byLab, suggested.accepted().size());
    assertTrue(suggested.verdicts().stream().noneMatch(Verdict::excluded));
    assertTrue(Screening.of(study, captures).accepted().size() < suggested.accepted().size());
  }

  @Test
  void aVerdictIsOneSentence() {
    CaptureEntry entry = study.captures().get(0);
    assertEquals(
        "lost seal: bass below the unit's best seal is 7.4 dB, but at most 4.0 dB is allowed",
        new Verdict(entry, Finding.LOST_SEAL, 7.41, 4, "", false).sentence());
  }

  @Test
  void aFileGivenTwiceIsReported() {
    AnchoredCapture first = captures.get(0);
    List<Verdict> verdicts = SameContent.of(List.of(first, first));
    assertEquals(
        List.of(
            "has copies: captures/plate/alder-1-M-1.csv holds the same curve; it counts once, here",
            "same content: the file holds the same curve as captures/plate/alder-1-M-1.csv (line "
                + first.capture().entry().line()
                + "), which stands first and counts alone"),
        verdicts.stream().map(Verdict::sentence).toList());
  }

  /** A correction of each session's drift gives copies in two sessions two shapes. */
  @Test
  void copiesStayCopiesWhenTheirSessionsAreCorrected() {
    List<AnchoredCapture> copied = new ArrayList<>(captures);
    AnchoredCapture first = captures.get(0);
    AnchoredCapture last = captures.get(captures.size() - 1);
    copied.set(
        captures.size() - 1,
        new AnchoredCapture(
            last.capture().withResponse(first.capture().response()), first.levels(), 0));
    Screening before = Screening.of(study, copied);
    Screening after = before.again(study, captures);
    for (Screening screening : List.of(before, after)) {
      assertTrue(
          screening.verdicts().stream()
              .anyMatch(
                  v ->
                      v.finding() == Finding.SAME_CONTENT
                          && v.excluded()
                          && v.capture().equals(last.capture().entry())));
      assertTrue(
          screening.accepted().stream()
              .anyMatch(c -> c.capture().entry().equals(first.capture().entry())));
    }
  }
}
