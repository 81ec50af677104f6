package org.twinrig.screening;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Side;
import org.twinrig.response.Levels;
import org.twinrig.study.AnchoredCapture;

/**
 * The captures of one side of one unit on one fixture: the same thing, seated again and again.
 *
 * @param kind the unit's kind
 * @param captures in the order of their rows, at least one
 */
record Group(Key key, String kind, List<AnchoredCapture> captures) {

  /** Whose captures. */
  record Key(String unit, String fixture, Side side) {}

  /** Groups judged by one scale. */
  private record Scale(String kind, String fixture) {}

  /** Captures sorted into groups, in order of first appearance. */
  static List<Group> of(List<AnchoredCapture> captures, Function<String, String> kindOfUnit) {
    Map<Key, List<AnchoredCapture>> byKey = new LinkedHashMap<>();
    for (AnchoredCapture c : captures) {
      var entry = c.capture().entry();
      Key key = new Key(entry.unit(), entry.fixture(), entry.side());
      byKey.computeIfAbsent(key, k -> new ArrayList<>()).add(c);
    }
    return byKey.entrySet().stream()
        .map(e -> new Group(e.getKey(), kindOfUnit.apply(e.getKey().unit), e.getValue()))
        .toList();
  }

  /** Groups that are judged by one scale: the same kind on the same fixture. */
  static List<List<Group>> byScale(List<Group> groups) {
    Map<Scale, List<Group>> byScale = new LinkedHashMap<>();
    for (Group g : groups) {
      byScale.computeIfAbsent(new Scale(g.kind, g.key.fixture), k -> new ArrayList<>()).add(g);
    }
    return List.copyOf(byScale.values());
  }

  BandGrid grid() {
    return captures.get(0).levels().grid();
  }

  /** The median, band by band, of curves on one grid; missing where none has a level. */
  static Levels medianCurve(List<Levels> curves) {
    BandGrid grid = curves.get(0).grid();
    double[] middle = new double[grid.size()];
    double[] present = new double[curves.size()];
    for (int b = 0; b < middle.length; b++) {
      int count = 0;
      for (Levels curve : curves) {
        if (curve.has(b)) {
          present[count++] = curve.db(b);
        }
      }
      middle[b] = count == 0 ? Double.NaN : Scatter.median(Arrays.copyOf(present, count));
    }
    return Levels.copyOf(grid, middle);
  }
}
