package org.twinrig.study;

import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import org.twinrig.internal.Numbers;
import org.twinrig.spectrum.ImpulseWindow;
import org.twinrig.spectrum.Sweep;

/** The keys {@code impulse} and {@code sweep} of study.yaml: what sound files hold. */
final class SoundReader {
  private static final List<String> IMPULSE_KEYS =
      List.of("before_onset_ms", "length_ms", "fade_ms");
  private static final List<String> SWEEP_KEYS =
      List.of("from_hz", "to_hz", "seconds", "fade_in_ms", "fade_out_ms");

  private static final double MOST_BEFORE_MS = 100;
  private static final double LEAST_LENGTH_MS = 5;
  private static final double MOST_LENGTH_MS = 2000;
  private static final double LEAST_SECONDS = 0.5;
  private static final double MOST_SECONDS = 60;

  private SoundReader() {}

  static Optional<ImpulseWindow> window(YamlValue value, Setting.Context so) {
    ImpulseWindow defaults = Setting.IMPULSE.standard();
    Optional<YamlGroup> group = value.group(IMPULSE_KEYS);
    if (group.isEmpty()) {
      return Optional.empty();
    }
    Optional<YamlValue> before = group.get().value("before_onset_ms");
    if (so.root().value("sweep").isPresent() && before.isPresent()) {
      return before
          .get()
          .problem(
              before.get().line(),
              "`impulse.before_onset_ms` has no effect beside `sweep`",
              "leave it out: with a sweep the window opens as early as the second harmonic allows");
    }
    Optional<Double> beforeMs = ms(group.get(), "before_onset_ms", defaults.beforeOnsetMs());
    Optional<Double> lengthMs = length(group.get(), defaults.lengthMs());
    double half = lengthMs.orElse(defaults.lengthMs()) / 2;
    Optional<Double> fadeMs =
        group
            .get()
            .value("fade_ms")
            .map(v -> number(v, ms -> ms >= 0 && ms <= half, "0", FrequencyReader.plain(half)))
            .orElse(Optional.of(Math.min(defaults.fadeMs(), half)));
    return beforeMs.isPresent() && lengthMs.isPresent() && fadeMs.isPresent()
        ? Optional.of(new ImpulseWindow(beforeMs.get(), lengthMs.get(), fadeMs.get()))
        : Optional.empty();
  }

  private static Optional<Double> length(YamlGroup group, double otherwise) {
    return group
        .value("length_ms")
        .map(v -> number(v, ms -> ms >= LEAST_LENGTH_MS && ms <= MOST_LENGTH_MS, "5", "2000"))
        .orElse(Optional.of(otherwise));
  }

  private static Optional<Double> ms(YamlGroup group, String key, double otherwise) {
    return group
        .value(key)
        .map(v -> number(v, ms -> ms >= 0 && ms <= MOST_BEFORE_MS, "0", "100"))
        .orElse(Optional.of(otherwise));
  }

  private static Optional<Double> number(
      YamlValue value, DoublePredicate fits, String least, String most) {
    return value.number(fits, "write a time in ms from " + least + " to " + most);
  }

  static Optional<Sweep> sweep(YamlValue value) {
    Optional<YamlGroup> group = value.group(SWEEP_KEYS);
    if (group.isEmpty()) {
      return Optional.empty();
    }
    Optional<Double> from =
        group.get().required("from_hz", "from_hz: 10").flatMap(FrequencyReader::hz);
    Optional<Double> to =
        group.get().required("to_hz", "to_hz: 22000").flatMap(FrequencyReader::hz);
    Optional<FrequencyRange> range = FrequencyReader.range(value, from, to);
    Optional<Double> seconds =
        group
            .get()
            .required("seconds", "seconds: 10")
            .flatMap(
                v ->
                    v.number(
                        s -> s >= LEAST_SECONDS && s <= MOST_SECONDS,
                        "write a time in seconds from 0.5 to 60"));
    Optional<Double> fadeIn = ms(group.get(), "fade_in_ms", 0);
    Optional<Double> fadeOut = ms(group.get(), "fade_out_ms", 0);
    return range.isPresent() && seconds.isPresent() && fadeIn.isPresent() && fadeOut.isPresent()
        ? wideEnough(
            value,
            new Sweep(
                range.get().fromHz(),
                range.get().toHz(),
                seconds.get(),
                fadeIn.get(),
                fadeOut.get()))
        : Optional.empty();
  }

  /** Below an octave there is no second harmonic to keep out and nothing to compare. */
  private static Optional<Sweep> wideEnough(YamlValue value, Sweep sweep) {
    return sweep.toHz() >= 2 * sweep.fromHz()
        ? Optional.of(sweep)
        : value.problem(
            value.line(),
            "`sweep` runs from "
                + Numbers.hertz(sweep.fromHz())
                + " to "
                + Numbers.hertz(sweep.toHz())
                + ", less than an octave",
            "give the sweep as it was played");
  }
}
