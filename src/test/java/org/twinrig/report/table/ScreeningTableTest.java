package org.twinrig.report.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Side;
import org.twinrig.response.Levels;
import org.twinrig.screening.Finding;
import org.twinrig.screening.Screening;
import org.twinrig.screening.Verdict;
import org.twinrig.study.PairedUnits;
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
    StudyOutcome outcome =
        outcome(
            List.of(entry(1, "lead was loose"), entry(2, ""), entry(3, "")), verdicts, List.of());
    StudyResults.write(folder, outcome);
    assertEquals(
        List.of(
            "unit,fixture,side,seating,file,finding,value,limit,excluded",
            "Elm 1,head,L,1,elm-1.csv,left out by the lab: lead was loose,,,lab",
            "Elm 1,head,L,2,elm-2.csv,lost seal,9.410000,4.000000,rule",
            "Elm 1,head,L,3,elm-3.csv,noisy capture,0.430000,0.150000,no"),
        Files.readAllLines(folder.resolve("screening.csv")));
  }

  private static StudyOutcome outcome(
      List<CaptureEntry> captures, List<Verdict> verdicts, List<KindOutcome> kinds) {
    Study study =
        new Study(
            Path.of("."),
            "made",
            new Fixture("plate", "Plate", "", 100, 10_000),
            new Fixture("head", "Head", "", 20, 20_000),
            List.of(),
            captures,
            List.of(),
            Optional.empty(),
            Settings.defaults(),
            Path.of("."),
            List.of(),
            Map.of());
    return new StudyOutcome(
        study,
        "made",
        List.of(),
        new Screening(List.of(), verdicts),
        kinds,
        Optional.empty(),
        List.of(),
        List::of);
  }

  /** A unit that departs from its kind, of which nothing but the rows of screening is asked. */
  @Test
  void aUnitHasARowWithoutACapture() {
    BandGrid grid = BandGrid.covering(100, 10_000, 3);
    List<String> units = List.of("Oak 1", "Oak 2", "Oak 3", "Oak 4", "Oak 5", "Oak 7");
    List<Levels> levels =
        IntStream.range(0, 6)
            .mapToObj(u -> Levels.copyOf(grid, new double[grid.size()]).map(v -> u == 5 ? 9.0 : v))
            .toList();
    List<Levels> zero = levels.subList(0, 1);
    PairedUnits.OnFixture old = once(grid, Collections.nCopies(6, zero.get(0)));
    PairedUnits paired = new PairedUnits("in-ear", grid, units, old, once(grid, levels));
    KindOutcome kind =
        new KindOutcome(
            paired, null, null, List.of(), List.of(), null, null, null, List.of(), null);
    StudyOutcome outcome = outcome(List.of(), List.of(), List.of(kind));
    // 9 dB over 0.1 dB, which no units can be held to agree better than, and √(6/5).
    assertEquals(
        List.of("Oak 7,,,,,unit outlier,82.158384,11.933333,no"),
        ScreeningResults.SCREENING.rows(outcome).map(r -> String.join(",", r)).toList());
  }

  private static PairedUnits.OnFixture once(BandGrid grid, List<Levels> means) {
    double[] unknown = new double[grid.size()];
    Arrays.fill(unknown, Double.NaN);
    return new PairedUnits.OnFixture(
        means,
        Collections.nCopies(6, Collections.nCopies(grid.size(), 1)),
        Levels.copyOf(grid, unknown),
        means.stream().map(List::of).toList());
  }
}
