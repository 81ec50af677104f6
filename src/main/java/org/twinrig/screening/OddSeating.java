package org.twinrig.screening;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.response.Levels;
import org.twinrig.study.AnchoredCapture;

/**
 * Finds seatings that do not look like the unit's others.
 *
 * <p>For a unit seated at least three times, the distance of a seating is, in each of the four
 * parts 20 Hz–200 Hz–4 kHz–10 kHz–20 kHz, the root mean square difference from the median curve of
 * the unit's seatings. The limit of a part is the upper fence {@code Q₃ + 3.5(Q₃ - Q₁)} of the
 * distances of all seatings of the kind on the fixture, and at least 1.5 dB. A seating is reported
 * once, for the part in which it exceeds its limit most.
 *
 * <p>A multiple of the median distance does not do: the bass of a soft head scatters with a long
 * tail, and five medians accused up to one capture in eight. The 3.5 is our choice: in simulated
 * studies without a fault it accuses about 0.6 % of the captures, with three seatings as with five,
 * and 3 accuses more than one in a hundred. Common practice, no source.
 */
final class OddSeating {
  private static final double FLOOR_DB = 1.5;
  private static final double REACH = 3.5;
  private static final int LEAST_SEATINGS = 3;

  private OddSeating() {}

  private record Apart(AnchoredCapture capture, Levels fromMiddle) {}

  static List<Verdict> of(List<Group> groupsOfOneScale) {
    List<Apart> seatings = new ArrayList<>();
    for (Group group : groupsOfOneScale) {
      if (group.captures().size() >= LEAST_SEATINGS) {
        List<Levels> curves = group.captures().stream().map(AnchoredCapture::levels).toList();
        Levels middle = Group.medianCurve(curves);
        group.captures().forEach(c -> seatings.add(new Apart(c, c.levels().minus(middle))));
      }
    }
    Distances distances = new Distances(Finding.ODD_SEATING);
    for (Part part : Part.all(groupsOfOneScale.get(0).grid())) {
      distances.startPart();
      seatings.forEach(
          s -> part.rms(s.fromMiddle).ifPresent(rms -> distances.add(s.capture.entry(), rms)));
      distances.judge(Math.max(FLOOR_DB, distances.upperFence(REACH)), part::words);
    }
    return distances.verdicts();
  }
}
