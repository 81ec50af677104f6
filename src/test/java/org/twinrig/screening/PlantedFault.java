package org.twinrig.screening;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.response.Response;

/**
 * A fault planted into some captures of a study without faults.
 *
 * @param study the spoiled study
 * @param planted the captures that carry the fault
 */
record PlantedFault(SimulatedScreening study, Set<CaptureEntry> planted) {

  /** Spoils every capture that is to be spoiled. */
  static PlantedFault in(
      SimulatedScreening clean, Predicate<CaptureEntry> where, UnaryOperator<Response> fault) {
    List<Capture> captures = new ArrayList<>();
    Set<CaptureEntry> planted = new HashSet<>();
    for (Capture c : clean.captures()) {
      if (where.test(c.entry())) {
        captures.add(new Capture(c.entry(), fault.apply(c.response()), c.sha256()));
        planted.add(c.entry());
      } else {
        captures.add(c);
      }
    }
    return new PlantedFault(clean.with(captures), planted);
  }

  /** How many of the planted captures have the finding. */
  long found(Finding finding) {
    return study.screen().verdicts().stream()
        .filter(v -> v.finding() == finding && planted.contains(v.capture()))
        .count();
  }

  /** One seating of every third unit on each fixture. */
  static boolean now(CaptureEntry e) {
    return e.seating() == 2 && Math.floorMod(e.unit().hashCode(), 3) == 0;
  }

  static Response noisy(Response r, double sdDb, Random random) {
    return withLevels(r, i -> r.levelDb(i) + sdDb * random.nextGaussian());
  }

  /** A shelf of so many dB above 4 kHz. */
  static Response brighter(Response r, double db) {
    return withLevels(
        r,
        i -> {
          double x = r.frequencyHz(i) / 4000;
          return r.levelDb(i) + db * x * x / (1 + x * x);
        });
  }

  /** A peak of so many dB at 2 kHz, half an octave wide. */
  static Response peaked(Response r, double db) {
    return withLevels(
        r,
        i -> {
          double octaves = Math.log(r.frequencyHz(i) / 2000) / Math.log(2);
          return r.levelDb(i) + db * Math.exp(-Math.pow(octaves / 0.3, 2));
        });
  }

  static Response thinned(Response r, int every) {
    return points(r, i -> i % every == 0);
  }

  static Response cut(Response r, double fromHz, double toHz) {
    return points(r, i -> r.frequencyHz(i) >= fromHz && r.frequencyHz(i) <= toHz);
  }

  private static Response points(Response r, java.util.function.IntPredicate kept) {
    int[] points = IntStream.range(0, r.size()).filter(kept).toArray();
    return Response.copyOf(
        IntStream.of(points).mapToDouble(r::frequencyHz).toArray(),
        IntStream.of(points).mapToDouble(r::levelDb).toArray());
  }

  private static Response withLevels(Response r, java.util.function.IntToDoubleFunction level) {
    return Response.copyOf(
        IntStream.range(0, r.size()).mapToDouble(r::frequencyHz).toArray(),
        IntStream.range(0, r.size()).mapToDouble(level).toArray());
  }
}
