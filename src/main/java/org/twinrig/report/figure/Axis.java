package org.twinrig.report.figure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Anchor;

/**
 * An axis of a plot.
 *
 * @param words what is drawn along it, with its unit; may be empty
 * @param perDecade how much of it is as long as one decade of the frequency axis beside it; 0 where
 *     no proportion applies
 * @param lines where faint lines cross the plot
 */
record Axis(
    String words,
    double from,
    double to,
    boolean logarithmic,
    double perDecade,
    List<Tick> ticks,
    List<Double> lines) {
  /** A range of differences that is higher gets 25 dB a decade, so that it fits a page. */
  private static final double TALLEST_AT_10_DB = 12;

  private static final double HEIGHT = 250;

  record Tick(double value, String label) {}

  /** 20 Hz to 20 kHz with the usual ticks and lines at one to nine in each decade. */
  static Axis frequency() {
    List<Double> lines =
        IntStream.rangeClosed(2, 32)
            .mapToObj(k -> (k % 10) * Math.pow(10, 1 + k / 10))
            .filter(hz -> hz > 0)
            .toList();
    List<Double> labelled = List.of(20.0, 50.0, 100.0, 200.0, 500.0, 1e3, 2e3, 5e3, 1e4, 2e4);
    return logarithmic("Frequency, Hz", 20, 20_000, lines, labelled);
  }

  /** The same with a few ticks for a narrow graph; the first carries the unit. */
  static Axis fewFrequencies(double... hz) {
    List<Double> labelled = Arrays.stream(hz).boxed().toList();
    List<Tick> ticks = new ArrayList<>(logarithmic("", 20, 20_000, labelled, labelled).ticks);
    ticks.set(0, new Tick(hz[0], ticks.get(0).label + " Hz"));
    return new Axis("", 20, 20_000, true, 0, ticks, labelled);
  }

  /** A logarithmic axis of frequencies in Hz. */
  static Axis logarithmic(
      String words, double from, double to, List<Double> lines, List<Double> labelled) {
    List<Tick> ticks = labelled.stream().map(hz -> new Tick(hz, hertz(hz))).toList();
    return new Axis(words, from, to, true, 0, ticks, lines);
  }

  private static String hertz(double hz) {
    return hz < 1000 ? Long.toString((long) hz) : (long) (hz / 1000) + "k";
  }

  /** What levels that are lined up at an anchor are relative to; how they came where at none. */
  static String lined(Anchor anchor) {
    if (anchor instanceof Anchor.None) {
      return "Level as it came, dB";
    }
    return "Level, dB re "
        + (anchor instanceof Anchor.Range ? "mean over " : "level at ")
        + anchor.words();
  }

  /** Levels in steps of 10 dB, one decade as long as 25 dB (IEC 60263). */
  static Axis levels(String words, double lowest, double highest) {
    return stepped(words, lowest, highest, 10, 25);
  }

  /** Levels that hold all that is known of some numbers, with some room in dB; 0 to 10 for none. */
  static Axis levelsHolding(String words, double roomDb, double[]... levels) {
    double lowest = Values.least(Double.POSITIVE_INFINITY, levels);
    double highest = Values.greatest(Double.NEGATIVE_INFINITY, levels);
    return lowest > highest
        ? levels(words, 0, 10)
        : levels(words, lowest - roomDb, highest + roomDb);
  }

  /** Differences of levels: 10 dB a decade while that fits a page, otherwise 25 (IEC 60263). */
  static Axis differences(String words, double lowest, double highest) {
    return stepped(words, lowest, highest, 5, highest - lowest > TALLEST_AT_10_DB ? 25 : 10);
  }

  /** Whole steps that hold both ends. */
  static Axis stepped(String words, double lowest, double highest, double step, double perDecade) {
    long first = (long) Math.floor(lowest / step + 1e-9);
    long last = Math.max(first + 1, (long) Math.ceil(highest / step - 1e-9));
    int decimals = (int) Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
    List<Tick> ticks =
        LongStream.rangeClosed(first, last)
            .mapToObj(k -> new Tick(k * step, Numbers.fixed(k * step, decimals)))
            .toList();
    return linear(words, first * step, last * step, ticks).withProportion(perDecade);
  }

  /** A linear axis with a line at every tick. */
  static Axis linear(String words, double from, double to, List<Tick> ticks) {
    return new Axis(words, from, to, false, 0, ticks, ticks.stream().map(Tick::value).toList());
  }

  Axis withProportion(double unitsPerDecade) {
    return new Axis(words, from, to, logarithmic, unitsPerDecade, ticks, lines);
  }

  /** The least of 1, 2 and 5 times a power of ten that is no less. */
  static double roundStep(double least) {
    double power = Math.pow(10, Math.floor(Math.log10(least)));
    double rest = least / power;
    return power * (rest <= 1 + 1e-9 ? 1 : rest <= 2 ? 2 : rest <= 5 ? 5 : 10);
  }

  /** How tall the axis is beside a frequency axis, in px. */
  double height(double pixelsPerDecade) {
    return perDecade > 0 ? (to - from) / perDecade * pixelsPerDecade : HEIGHT;
  }

  /** How far along the axis a value lies, 0 to 1; its ends stand for what is beyond. */
  double share(double value) {
    double held = held(value);
    return logarithmic ? Math.log(held / from) / Math.log(to / from) : (held - from) / (to - from);
  }

  /** A value on the axis; its ends stand for what is beyond, NaN stays. */
  double held(double value) {
    return Math.max(from, Math.min(to, value));
  }

  /** Whether all values lie on the axis, but for those that are NaN. */
  boolean holdsAll(double[]... values) {
    return Arrays.stream(values)
        .flatMapToDouble(Arrays::stream)
        .allMatch(v -> Double.isNaN(v) || v == held(v));
  }
}
