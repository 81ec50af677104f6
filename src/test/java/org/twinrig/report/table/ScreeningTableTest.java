package org.twinrig.report.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Side;
import org.twinrig.screening.Finding;
import org.twinrig.screening.Screening;
import org.twinrig.screening.Verdict;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/** screening.csv, word for word. */
class ScreeningTableTest {
  private static CaptureEntry entry(int seating, String exclude) {
    String file = "elm-" + seating + ".csv";
    return new CaptureEntry(
        "Elm 1", "head", Side.L, seating, file, "", exclude, "", "", seating + 1);
  }

  @Test
  void capturesAndTheLabHaveTheirRows(@TempDir Path folder) throws IOException {
    List<Verdict> verdicts =
        List.of(
            new Verdict(entry(2, ""), Finding.LOST_SEAL, 9.41, 4, "", true),
            new Verdict(entry(3, ""), Finding.NOISY, 0.43, 0.15, "20 Hz to 200 Hz", false));
    Study study =
        new Study(
            Path.of("."),
            "made",
            new Fixture("plate", "Plate", "", 100, 10_000),
            new Fixture("head", "Head", "", 20, 20_000),
            List.of(),
            List.of(entry(1, "lead was loose"), entry(2, ""), entry(3, "")),
            List.of(),
            Optional.empty(),
            Settings.defaults(),
            Path.of("."),
            List.of(),
            Map.of());
    StudyOutcome outcome =
        new StudyOutcome(
            study,
            "made",
            List.of(),
            new Screening(List.of(), verdicts),
            List.of(),
            java.util.Optional.empty(),
            List.of(),
            List::of);
    StudyResults.write(folder, outcome);
    assertEquals(
        List.of(
            "unit,fixture,side,seating,file,finding,value,limit,excluded",
            "Elm 1,head,L,1,elm-1.csv,left out by the lab: lead was loose,,,lab",
            "Elm 1,head,L,2,elm-2.csv,lost seal,9.410000,4.000000,rule",
            "Elm 1,head,L,3,elm-3.csv,noisy capture,0.430000,0.150000,no"),
        Files.readAllLines(folder.resolve("screening.csv")));
  }
}
