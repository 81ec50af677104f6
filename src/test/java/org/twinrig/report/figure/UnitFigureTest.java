package org.twinrig.report.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.study.PairedUnits;

/** One unit against the others of its kind. */
class UnitFigureTest {
  private static final BandGrid GRID = BandGrid.covering(31.5, 16_000, 1);
  private static final Caption CAPTION = new Caption("in-ear", 5, 0.95, "0123456789ab");

  private static final Anchor NONE = new Anchor.None();

  private static Levels levels(double... db) {
    return Levels.copyOf(GRID, db);
  }

  /** Units whose differences are alike but for the first one's at 1 kHz. */
  private static PairedUnits paired(int units, double firstDb) {
    int at = 5;
    List<Levels> from =
        IntStream.range(0, units).mapToObj(i -> levels(new double[GRID.size()])).toList();
    List<Levels> to =
        IntStream.range(0, units)
            .mapToObj(
                i -> {
                  double[] db = new double[GRID.size()];
                  db[at] = i == 0 ? firstDb : i % 2 == 0 ? 1 : -1;
                  return levels(db);
                })
            .toList();
    return new PairedUnits(
        "in-ear",
        GRID,
        IntStream.range(0, units).mapToObj(i -> "Alder " + (i + 1)).toList(),
        on(from),
        on(to));
  }

  private static PairedUnits.OnFixture on(List<Levels> means) {
    List<Integer> once = IntStream.range(0, GRID.size()).mapToObj(b -> 1).toList();
    double[] none = new double[GRID.size()];
    java.util.Arrays.fill(none, Double.NaN);
    return new PairedUnits.OnFixture(
        means,
        means.stream().map(m -> once).toList(),
        levels(none),
        means.stream().map(List::of).toList());
  }

  @Test
  void theFindingIsTheTitleAndTheWordsTellTheRest() {
    Figure figure = UnitFigure.of(paired(5, -4.3), "Alder 1", CAPTION, NONE).orElseThrow();
    assertEquals("unit-alder_1-f3432088", figure.name());
    assertEquals(
        "Alder 1 stands out most near 1 kHz: 4.3 dB below the others' mean", figure.title());
    // Of +1 and -1 twice each the SD is 1.15: twice that is left by the one band at 1 kHz.
    assertEquals(
        "Difference between the fixtures against frequency: Alder 1 as a strong line, the other"
            + " units of its kind as thin ones, their mean dashed, and a pale band of two standard"
            + " deviations about it, outside which Alder 1 lies over 1.0 octaves",
        figure.alt());
    assertTrue(figure.svg().contains(">in-ear, against 4 other units; each line: mean of a"));
    assertTrue(figure.svg().contains(">± 2 SD of the others<"), "key");
    assertTrue(
        UnitFigure.of(paired(5, 2.3), "Alder 1", CAPTION, NONE)
            .orElseThrow()
            .alt()
            .endsWith("0.0 octaves"));
  }

  @Test
  void nothingIsDrawnOfAStrangerOrAgainstTwo() {
    assertEquals(Optional.empty(), UnitFigure.of(paired(5, 1), "Oak 1", CAPTION, NONE));
    assertEquals(Optional.empty(), UnitFigure.of(paired(3, 1), "Alder 1", CAPTION, NONE));
    assertTrue(UnitFigure.of(paired(4, 1), "Alder 1", CAPTION, NONE).isPresent());
  }

  @Test
  void allUnitsOfAKindAreOneSheet() {
    Figure sheet = UnitFigure.all(paired(6, 3), CAPTION).orElseThrow();
    assertEquals("units-in-ear", sheet.name());
    assertEquals("In-ear: every unit against the others", sheet.title());
    assertEquals(
        "Small graphs, one for each of 6 units: its difference between the fixtures against"
            + " frequency over a pale band of two standard deviations about the mean of the others",
        sheet.alt());
    for (int k = 1; k <= 6; k++) {
      assertTrue(sheet.svg().contains(">Alder " + k + "<"), "unit " + k);
    }
    assertEquals(Optional.empty(), UnitFigure.all(paired(3, 3), CAPTION));
  }
}
