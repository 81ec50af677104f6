package org.twinrig.screening;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import org.twinrig.capture.CaptureEntry;

/** Distances of captures, part by part, and the worst verdict on each. */
final class Distances {
  private final Finding finding;
  private final List<CaptureEntry> captures = new ArrayList<>();
  private final List<Double> values = new ArrayList<>();
  private final Map<CaptureEntry, Verdict> worst = new LinkedHashMap<>();

  Distances(Finding finding) {
    this.finding = finding;
  }

  void startPart() {
    captures.clear();
    values.clear();
  }

  void add(CaptureEntry capture, double value) {
    captures.add(capture);
    values.add(value);
  }

  /** The fence of this part's distances; 0 when there are none. */
  double upperFence(double reach) {
    double[] all = values.stream().mapToDouble(Double::doubleValue).toArray();
    return all.length == 0 ? 0 : Scatter.upperFence(all, reach);
  }

  /**
   * Doubts every capture whose distance in this part exceeds the limit. The part in words is asked
   * for only when there is something to say.
   */
  void judge(double limit, Supplier<String> where) {
    judge(limit, (capture, value) -> new Told(capture, where.get()));
  }

  /** The same, where the distance of one capture may be the fault of another. */
  void judge(double limit, BiFunction<CaptureEntry, Double, Told> of) {
    for (int i = 0; i < captures.size(); i++) {
      if (values.get(i) > limit) {
        Told told = of.apply(captures.get(i), values.get(i));
        worst.merge(
            captures.get(i),
            Verdict.of(told.accused, finding, values.get(i), limit, told.where),
            Distances::worse);
      }
    }
  }

  /** Whom a distance accuses, and where it was found. */
  record Told(CaptureEntry accused, String where) {}

  /** One verdict per capture: that of the part in which it exceeds its limit most. */
  List<Verdict> verdicts() {
    return List.copyOf(worst.values());
  }

  private static Verdict worse(Verdict one, Verdict other) {
    return other.value() / other.limit() > one.value() / one.limit() ? other : one;
  }
}
