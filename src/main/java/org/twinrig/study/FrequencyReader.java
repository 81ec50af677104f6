package org.twinrig.study;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.twinrig.internal.Numbers;

/** Frequencies and ranges of frequencies in study.yaml. */
final class FrequencyReader {
  private FrequencyReader() {}

  static Optional<Double> hz(YamlValue value) {
    return value.number(NumberRange.HZ);
  }

  /** A range written as a list of its two ends. */
  static Optional<FrequencyRange> pair(YamlValue value) {
    String remedy = "write two frequencies in Hz, as in `[100, 10000]`";
    Optional<List<YamlValue>> ends = value.list(remedy);
    if (ends.isEmpty() || ends.get().size() != 2) {
      return ends.isEmpty()
          ? Optional.empty()
          : value.problem(
              value.line(),
              "`" + value.name() + "` has " + Numbers.count(ends.get().size(), "entry", "entries"),
              remedy);
    }
    return range(value, hz(ends.get().get(0)), hz(ends.get().get(1)));
  }

  /** A range whose ends were read apart; refused when they are not in order. */
  static Optional<FrequencyRange> range(
      YamlValue owner, Optional<Double> from, Optional<Double> to) {
    if (from.isEmpty() || to.isEmpty()) {
      return Optional.empty();
    }
    if (from.get() >= to.get()) {
      return owner.problem(
          owner.line(),
          "`"
              + owner.name()
              + "` runs from "
              + plain(from.get())
              + " Hz to "
              + plain(to.get())
              + " Hz",
          "the first frequency must be the lower one");
    }
    return Optional.of(new FrequencyRange(from.get(), to.get()));
  }

  static String plain(double number) {
    return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }
}
