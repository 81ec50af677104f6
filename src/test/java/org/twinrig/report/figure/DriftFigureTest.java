package org.twinrig.report.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.twinrig.screening.ControlLimits;
import org.twinrig.screening.DriftChart;
import org.twinrig.screening.FixtureDrift;

class DriftFigureTest {
  private static Figure draw(DriftChart level) {
    FixtureDrift drift = new FixtureDrift("head", "head, soft", level, List.of(level), List.of());
    return DriftFigure.of(drift, "Oak 1", "f00d");
  }

  @Test
  void aUnitThatWasNeverCapturedHasAnEmptyChart() {
    Figure figure = draw(new DriftChart(Optional.empty(), List.of(), Optional.empty()));
    assertEquals("drift-head", figure.name());
    assertEquals("Head, soft: the check unit was not captured", figure.title());
    assertTrue(figure.svg().contains(">check unit Oak 1, 0 sessions; limits need 6<"));
  }

  @Test
  void sessionsStandSideBySideWithTheirNamesAndThoseOutsideAreMarked() {
    List<DriftChart.Point> points =
        IntStream.range(0, 8)
            .mapToObj(
                i ->
                    new DriftChart.Point(
                        "s" + i,
                        i == 5 ? 94.6 : 94,
                        2,
                        Optional.of(new DriftChart.Average(94, 0.1)),
                        i == 5))
            .toList();
    Figure figure =
        draw(new DriftChart(Optional.empty(), points, Optional.of(new ControlLimits(94, 0.1, 3))));
    for (int i = 0; i < 8; i++) {
      assertTrue(figure.svg().contains(">s" + i + "<"), "session " + i);
    }
    assertTrue(figure.svg().contains(">1.0<") && figure.svg().contains(">-1.0<"), "re centre");
    assertTrue(figure.svg().contains(">diamond: outside its limits; sessions from left to right<"));
    long diamonds =
        figure.svg().lines().filter(l -> l.startsWith("<path fill=\"#1f3a6e\"")).count();
    assertEquals(2, diamonds, "in the level's chart and in that of the one octave");
  }
}
