package org.twinrig.screening;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.twinrig.capture.Side;
import org.twinrig.study.AnchoredCapture;

/**
 * The captures of one side of one unit on one fixture: the same thing, seated again and again.
 *
 * @param kind the unit's kind
 * @param fixture the fixture
 * @param captures in the order of their seatings
 */
record Group(String kind, String fixture, List<AnchoredCapture> captures) {

  private record Key(String unit, String fixture, Side side) {}

  /** Captures sorted into groups, in order of first appearance. */
  static List<Group> of(List<AnchoredCapture> captures, Function<String, String> kindOfUnit) {
    Map<Key, List<AnchoredCapture>> byKey = new LinkedHashMap<>();
    for (AnchoredCapture c : captures) {
      var entry = c.capture().entry();
      byKey
          .computeIfAbsent(
              new Key(entry.unit(), entry.fixture(), entry.side()), k -> new ArrayList<>())
          .add(c);
    }
    return byKey.entrySet().stream()
        .map(e -> new Group(kindOfUnit.apply(e.getKey().unit), e.getKey().fixture, e.getValue()))
        .toList();
  }

  /** Groups that are judged by one scale: the same kind on the same fixture. */
  static Map<List<String>, List<Group>> byScale(List<Group> groups) {
    Map<List<String>, List<Group>> byScale = new LinkedHashMap<>();
    for (Group g : groups) {
      byScale.computeIfAbsent(List.of(g.kind, g.fixture), k -> new ArrayList<>()).add(g);
    }
    return byScale;
  }

  /** The middle value; of an even number, the mean of the two in the middle. */
  static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }
}
