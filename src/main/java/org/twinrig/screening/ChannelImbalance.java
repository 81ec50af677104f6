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
 * <p>With fewer of them that comparison is not made. A pair is reported once, at the side that
 * moved: the one farther, in that part, from the median of the unit's other seatings of that side.
 * The sentence says when the other moved more than half as far. Neither moved when both did by less
 * than {@value #LEAST_MOVED} of what is reported, or there is no other seating: then which side is
 * wrong cannot be told, the sentence says so and stands at the right side. The factors are our
 * choice: common practice, no source.
 */
final class ChannelImbalance {
  private static final double FLOOR_DB = 3;
  private static final double REACH = 5;
  private static final double MEDIANS = 4;
  private static final int LEAST = 3;
  private static final double LEAST_MOVED = 0.4;
  private static final double BOTH_MOVED = 0.5;

  private ChannelImbalance() {}

  /** One seating among those of its sides, and left minus right. */
  private record Pair(
      AnchoredCapture left, AnchoredCapture right, Group lefts, Group rights, Levels difference) {

    CaptureEntry entry() {
      return right.entry();
    }

    /** The side that moved, for a distance of so many dB. */
    Distances.Told told(Part part, String against, double valueDb) {
      double ofLeft = movedDb(left, lefts, part);
      double ofRight = movedDb(right, rights, part);
      double most = Math.max(ofLeft, ofRight);
      if (most < LEAST_MOVED * valueDb) {
        return told(right, part, against, "which side is wrong cannot be told");
      }
      boolean leftMost = ofLeft > ofRight;
      AnchoredCapture moved = leftMost ? left : right;
      if (Math.min(ofLeft, ofRight) > BOTH_MOVED * most) {
        return told(moved, part, against, "both sides moved");
      }
      return told(moved, part, against, leftMost ? "the left moved" : "the right moved");
    }

    private static Distances.Told told(
        AnchoredCapture accused, Part part, String against, String which) {
      return new Distances.Told(accused.entry(), part.words() + against + " (" + which + ")");
    }

    private static int seating(AnchoredCapture capture) {
      return capture.entry().seating();
    }

    private static double movedDb(AnchoredCapture own, Group side, Part part) {
      List<Levels> others =
          side.captures().stream()
              .filter(c -> seating(c) != seating(own))
              .map(AnchoredCapture::levels)
              .toList();
      return others.isEmpty()
          ? 0
          : part.rms(own.levels().minus(Group.medianCurve(others))).orElse(0);
    }
  }

  static List<Verdict> of(List<Group> groupsOfOneScale) {
    List<List<Pair>> units = units(groupsOfOneScale);
    Distances distances = new Distances(Finding.CHANNEL_IMBALANCE);
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
    left.captures().forEach(c -> bySeating.putIfAbsent(c.entry().seating(), c));
    List<Pair> pairs = new ArrayList<>();
    for (AnchoredCapture r : right.captures()) {
      AnchoredCapture l = bySeating.get(r.entry().seating());
      if (l != null) {
        pairs.add(new Pair(l, r, left, right, l.levels().minus(r.levels())));
      }
    }
    return pairs;
  }

  private static void againstOwnSeatings(List<List<Pair>> units, Part part, Distances distances) {
    distances.startPart();
    Map<CaptureEntry, Pair> seated = new HashMap<>();
    for (List<Pair> pairs : units) {
      if (pairs.size() >= LEAST) {
        Levels usual = Group.medianCurve(pairs.stream().map(Pair::difference).toList());
        for (Pair pair : pairs) {
          seated.put(pair.entry(), pair);
          part.rms(pair.difference.minus(usual)).ifPresent(rms -> distances.add(pair.entry(), rms));
        }
      }
    }
    double limit = Math.max(FLOOR_DB, distances.upperFence(REACH));
    String against = ", against the unit's other seatings";
    distances.judge(limit, (entry, db) -> seated.get(entry).told(part, against, db));
  }

  private static void againstOtherUnits(List<List<Pair>> units, Part part, Distances distances) {
    for (int i = 0; i < units.size(); i++) {
      double[] others = othersRms(units, i, part);
      if (others.length >= LEAST) {
        distances.startPart();
        Map<CaptureEntry, Pair> seated = new HashMap<>();
        for (Pair pair : units.get(i)) {
          seated.put(pair.entry(), pair);
          part.rms(pair.difference).ifPresent(rms -> distances.add(pair.entry(), rms));
        }
        double limit = Math.max(FLOOR_DB, MEDIANS * Scatter.median(others));
        distances.judge(limit, (entry, db) -> seated.get(entry).told(part, "", db));
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
