package org.twinrig.screening;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Side;
import org.twinrig.response.Levels;
import org.twinrig.study.AnchoredCapture;

/**
 * Finds seatings whose left and right differ too much. Compared is the anchored curve of the left
 * minus that of the right of one seating, part by part (20 Hz–200 Hz–4 kHz–10 kHz–20 kHz), as a
 * root mean square, in two ways:
 *
 * <ul>
 *   <li>against the median of the same difference over the unit's seatings on the fixture (three or
 *       more): a seating with its sides exchanged, or with one side badly seated, stands out. The
 *       limit is the upper fence {@code Q₃ + 5(Q₃ - Q₁)} over the kind's seatings there, at least 3
 *       dB;
 *   <li>by itself, against the other units of the kind on the fixture (three or more): a unit built
 *       unevenly, or measured unevenly throughout, stands out. The limit is four times the median
 *       of the others, at least 3 dB.
 * </ul>
 *
 * <p>With fewer of them that comparison is not made. A pair is reported once, at its right side:
 * which of the two is wrong cannot be told. The factors are our choice: common practice, no source.
 */
final class SideImbalance {
  private static final double FLOOR_DB = 3;
  private static final double REACH = 5;
  private static final double MEDIANS = 4;
  private static final int LEAST = 3;

  private SideImbalance() {}

  /** Left minus right of one seating. */
  private record Pair(CaptureEntry right, Levels difference) {}

  static List<Verdict> of(List<Group> groupsOfOneScale) {
    List<List<Pair>> units = units(groupsOfOneScale);
    Distances distances = new Distances(Finding.SIDE_IMBALANCE);
    for (Part part : Part.all(groupsOfOneScale.get(0).grid())) {
      againstOwnSeatings(units, part, distances);
      againstOtherUnits(units, part, distances);
    }
    return distances.verdicts();
  }

  private static List<List<Pair>> units(List<Group> groups) {
    Map<String, Group> lefts = new HashMap<>();
    Map<String, Group> rights = new LinkedHashMap<>();
    for (Group g : groups) {
      if (g.first().side() == Side.L) {
        lefts.put(g.first().unit(), g);
      } else if (g.first().side() == Side.R) {
        rights.put(g.first().unit(), g);
      }
    }
    List<List<Pair>> units = new ArrayList<>();
    rights.forEach(
        (unit, right) -> {
          if (lefts.containsKey(unit)) {
            units.add(pairs(lefts.get(unit), right));
          }
        });
    return units;
  }

  private static List<Pair> pairs(Group left, Group right) {
    Map<Integer, AnchoredCapture> bySeating = new HashMap<>();
    left.captures().forEach(c -> bySeating.putIfAbsent(c.capture().entry().seating(), c));
    List<Pair> pairs = new ArrayList<>();
    for (AnchoredCapture r : right.captures()) {
      AnchoredCapture l = bySeating.get(r.capture().entry().seating());
      if (l != null) {
        pairs.add(new Pair(r.capture().entry(), l.levels().minus(r.levels())));
      }
    }
    return pairs;
  }

  private static void againstOwnSeatings(List<List<Pair>> units, Part part, Distances distances) {
    distances.startPart();
    for (List<Pair> pairs : units) {
      if (pairs.size() >= LEAST) {
        Levels usual = Group.medianCurve(pairs.stream().map(Pair::difference).toList());
        for (Pair pair : pairs) {
          part.rms(pair.difference.minus(usual)).ifPresent(rms -> distances.add(pair.right, rms));
        }
      }
    }
    double limit = Math.max(FLOOR_DB, distances.upperFence(REACH));
    distances.judge(limit, () -> part.words() + ", against the unit's other seatings");
  }

  private static void againstOtherUnits(List<List<Pair>> units, Part part, Distances distances) {
    for (int i = 0; i < units.size(); i++) {
      double[] others = othersRms(units, i, part);
      if (others.length >= LEAST) {
        distances.startPart();
        for (Pair pair : units.get(i)) {
          part.rms(pair.difference).ifPresent(rms -> distances.add(pair.right, rms));
        }
        distances.judge(Math.max(FLOOR_DB, MEDIANS * Scatter.median(others)), part::words);
      }
    }
  }

  /** For every unit but one, the median of its seatings. */
  private static double[] othersRms(List<List<Pair>> units, int without, Part part) {
    return IntStream.range(0, units.size())
        .filter(j -> j != without)
        .mapToObj(units::get)
        .map(p -> p.stream().flatMapToDouble(of -> part.rms(of.difference).stream()).toArray())
        .filter(rms -> rms.length > 0)
        .mapToDouble(Scatter::median)
        .toArray();
  }
}
