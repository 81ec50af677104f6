package org.twinrig.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.twinrig.analysis.ScreeningEffect;

/** The sentences on screening, word for word. */
class ScreeningWordsTest {
  @Test
  void theEffectIsToldInTheDirectionInWhichTheStudyWent() {
    ScreeningEffect effect =
        new ScreeningEffect("in-ear", 4, Optional.of(new ScreeningEffect.Change(21.8, 0.81)));
    assertEquals(
        "in-ear: leaving out the 4 captures that the rules do not believe moves the mean transfer by"
            + " at most 0.8 dB (up, at 21.8 Hz).",
        ScreeningWords.effect(effect, false));
    assertEquals(
        "in-ear: using the 4 captures that the rules do not believe moves the mean transfer by at"
            + " most 0.8 dB (down, at 21.8 Hz).",
        ScreeningWords.effect(effect, true));
  }

  @Test
  void anEffectTooSmallToPrintIsSaidToBeSmall() {
    assertEquals(
        "on-ear: leaving out the 1 capture that the rules do not believe moves the mean transfer"
            + " nowhere by as much as 0.1 dB.",
        ScreeningWords.effect(
            new ScreeningEffect("on-ear", 1, Optional.of(new ScreeningEffect.Change(40, -0.04))),
            false));
    assertEquals(
        "on-ear: leaving out the 2 captures that the rules do not believe decides whether there is"
            + " a mean transfer at all: without them, units are too few.",
        ScreeningWords.effect(new ScreeningEffect("on-ear", 2, Optional.empty()), false));
  }

  @Test
  void whatBecomesOfFindingsIsSaid() {
    assertEquals(
        "Every capture is compared with the unit's others on the same fixture and with how far"
            + " seatings of its kind scatter there. Where the study says so (screening: apply:"
            + " exclude), the rules leave out captures they do not believe: lost seal, odd seating,"
            + " same content. A curve that several rows give counts once in every study. All other"
            + " findings are only reported: has copies, side imbalance, level jump, noisy"
            + " capture, few points, narrow range, drifting session. A unit that departs from its kind is never left"
            + " out by a rule, for it may show what the kind is really like.",
        ScreeningWords.rules());
  }
}
