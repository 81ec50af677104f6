package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import org.twinrig.band.Band;
import org.twinrig.regression.BandOutcome;
import org.twinrig.response.Anchor;
import org.twinrig.translation.LevelShift;

/**
 * What another anchor would make of the mean transfer in the bass: the mean over the bands up to
 * 200 Hz, dB, with the levels lined up elsewhere, and as calibrated. To line up elsewhere takes the
 * mean transfer over those bands off every band, whatever it is: leaks that reach into an anchor
 * make all other bands look different.
 *
 * @param lined one mean per {@link #ANCHORS}; nothing where a band lacks its estimate
 * @param calibrated without an anchor; nothing where levels are not known on both fixtures
 */
public record AnchorEffect(String kind, List<OptionalDouble> lined, OptionalDouble calibrated) {
  /** The anchors that are in use: common practice, no source. */
  public static final List<Anchor> ANCHORS =
      List.of(new Anchor.Range(300, 1000), new Anchor.Range(500, 1000), new Anchor.Frequency(1000));

  private static final double BASS_HZ = 200;

  public AnchorEffect {
    lined = List.copyOf(lined);
  }

  /** The effect on a kind, whose level shift may be known. */
  public static AnchorEffect of(String kind, List<BandOutcome> bands, Optional<LevelShift> shift) {
    OptionalDouble bass = mean(bands, band -> band.midHz() <= BASS_HZ);
    List<OptionalDouble> lined = new ArrayList<>();
    for (Anchor anchor : ANCHORS) {
      OptionalDouble there = mean(bands, anchor::linesUp);
      lined.add(
          bass.isPresent() && there.isPresent()
              ? OptionalDouble.of(bass.getAsDouble() - there.getAsDouble())
              : OptionalDouble.empty());
    }
    OptionalDouble calibrated =
        bass.isPresent() && shift.isPresent()
            ? OptionalDouble.of(bass.getAsDouble() + shift.get().mean().meanDb())
            : OptionalDouble.empty();
    return new AnchorEffect(kind, lined, calibrated);
  }

  /** The mean over some bands; nothing where there is none, or one has no estimate. */
  private static OptionalDouble mean(List<BandOutcome> all, Predicate<Band> which) {
    List<BandOutcome> bands = all.stream().filter(outcome -> which.test(outcome.band())).toList();
    return bands.stream().allMatch(BandOutcome.Fitted.class::isInstance)
        ? bands.stream().mapToDouble(b -> ((BandOutcome.Fitted) b).mean().meanDb()).average()
        : OptionalDouble.empty();
  }
}
