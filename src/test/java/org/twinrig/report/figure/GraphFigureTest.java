package org.twinrig.report.figure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.reliability.Mark;
import org.twinrig.response.Anchor;
import org.twinrig.response.Smoothing;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.Translation;
import org.twinrig.translation.Treatment;

/** What the axis of a re-expressed graph says of its level, and where it is lined up. */
class GraphFigureTest {
  private static final Translation.Origin ORIGIN =
      new Translation.Origin("t", "plate", "head", "500 Hz to 1 kHz", "f00d");
  private static final Anchor ANCHOR = new Anchor.Range(500, 1000);

  /** 90 dB in every band from 125 Hz on, 91 dB on the new fixture. */
  private static TranslatedGraph graph(double fromHz, Optional<String> drive, boolean known) {
    TranslatedBand.Reach reach = new TranslatedBand.Reach(1, 7);
    List<TranslatedBand> bands = new ArrayList<>();
    for (Band band : BandGrid.covering(125, 8000, 3).bands()) {
      boolean there = band.midHz() >= fromHz;
      bands.add(
          new TranslatedBand(
              band,
              there ? OptionalDouble.of(90) : OptionalDouble.empty(),
              there
                  ? Optional.of(new TranslatedBand.Predicted(91, 0, reach, reach))
                  : Optional.empty(),
              there ? Mark.RELIABLE : Mark.UNRELIABLE,
              List.of()));
    }
    CatalogueEntry entry =
        new CatalogueEntry(
            "G-1",
            "Oak 1",
            "in-ear",
            "g.csv",
            CatalogueEntry.Averaged.overSeatings(1),
            Optional.empty(),
            Optional.of(Smoothing.NONE),
            drive,
            "",
            "",
            2);
    Treatment treatment =
        new Treatment(
            Treatment.SmoothingMatch.ALIKE,
            known ? OptionalDouble.of(1) : OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            false);
    return new TranslatedGraph(entry, bands, treatment);
  }

  private static String drawn(TranslatedGraph graph, Anchor anchor) {
    return GraphFigure.of(graph, ORIGIN, anchor).svg();
  }

  @Test
  void aRelativeGraphIsDrawnReItsMeanOverTheAnchor() {
    TranslatedGraph relative = graph(100, Optional.empty(), false);
    TranslatedBand lined = relative.re(ANCHOR).orElseThrow().bands().get(3);
    assertEquals(0, lined.fromDb().orElseThrow(), 1e-12);
    assertEquals(1, lined.predicted().orElseThrow().toDb(), 1e-12);
    String svg = drawn(relative, ANCHOR);
    assertTrue(svg.contains(">Level, dB re mean over 500 Hz to 1 kHz<"), svg);
    assertTrue(svg.contains(">lined up here<"), svg);
    assertTrue(svg.contains("is expected after lining up over 500 Hz to 1 kHz<"), svg);
    assertTrue(
        drawn(relative, new Anchor.Frequency(1000)).contains(">Level, dB re level at 1 kHz<"));
    assertTrue(
        drawn(graph(100, Optional.of("1 V"), false), ANCHOR).contains(">lined up here<"),
        "an absolute graph that is given relative is a relative one");
  }

  @Test
  void whatIsNotLinedUpIsNotCalledSo() {
    for (String svg :
        List.of(
            drawn(graph(800, Optional.empty(), false), ANCHOR),
            drawn(graph(100, Optional.empty(), false), new Anchor.None()))) {
      assertTrue(svg.contains(">Level as it came, dB<"), svg);
      assertFalse(svg.contains("lined up") || svg.contains("lining up"), svg);
    }
  }

  @Test
  void anAbsoluteGraphIsDrawnInSoundPressureLevelAtItsDrive() {
    String svg = drawn(graph(100, Optional.of("1 V"), true), ANCHOR);
    assertTrue(svg.contains(">Level, dB SPL (re 20 µPa) at 1 V<"), svg);
    assertFalse(svg.contains("lined up") || svg.contains("lining up"), svg);
  }
}
