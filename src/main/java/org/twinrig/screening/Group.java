package org.twinrig.screening;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toList;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.DoubleStream;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Unit;
import org.twinrig.response.Levels;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Study;

/**
 * The captures of one side of one unit on one fixture, at least one, in the order of their rows:
 * the same thing, seated again and again.
 */
record Group(String kind, List<AnchoredCapture> captures) {

  /** A seating and its mean level over a part of the axis, dB. */
  record Seat(AnchoredCapture capture, double levelDb) {
    CaptureEntry entry() {
      return capture.entry();
    }
  }

  /**
   * Groups in order of first appearance, those together that are judged by one scale: the same kind
   * on the same fixture.
   */
  static List<List<Group>> byScale(Study study, List<AnchoredCapture> captures) {
    Map<String, String> kinds = new HashMap<>();
    for (Unit unit : study.units()) {
      kinds.put(unit.name(), unit.kind());
    }
    return List.copyOf(
        of(captures, kinds::get).stream()
            .collect(
                groupingBy(g -> List.of(g.kind, g.first().fixture()), LinkedHashMap::new, toList()))
            .values());
  }

  /** Captures sorted into groups, in order of first appearance. */
  static List<Group> of(List<AnchoredCapture> captures, Function<String, String> kindOfUnit) {
    return captures.stream()
        .collect(groupingBy(Group::seated, LinkedHashMap::new, toList()))
        .values()
        .stream()
        .map(all -> new Group(kindOfUnit.apply(all.get(0).entry().unit()), all))
        .toList();
  }

  private static List<Object> seated(AnchoredCapture capture) {
    CaptureEntry e = capture.entry();
    return List.of(e.unit(), e.fixture(), e.side());
  }

  /** The row of its first capture: all share unit, fixture and side. */
  CaptureEntry first() {
    return captures.get(0).entry();
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

  /** The same seatings with their mean level over a part, where they have one, set to 0 dB. */
  Group linedUp(Part part) {
    return new Group(
        kind,
        captures.stream()
            .map(
                c -> {
                  OptionalDouble at = part.mean(c.levels());
                  return at.isEmpty()
                      ? c
                      : new AnchoredCapture(
                          c.capture(),
                          c.levels().map(db -> db - at.getAsDouble()),
                          c.anchorDb() + at.getAsDouble());
                })
            .toList());
  }

  /** The seatings that have a level in a part. */
  List<Seat> seats(Part part) {
    List<Seat> seats = new ArrayList<>();
    for (AnchoredCapture c : captures) {
      part.mean(c.levels()).ifPresent(db -> seats.add(new Seat(c, db)));
    }
    return seats;
  }

  /**
   * The scatter of a level between seatings, from the differences within every unit ({@link
   * Scatter#ofPairs}); nothing where no unit was seated twice.
   */
  static OptionalDouble scatter(List<List<Seat>> units) {
    DoubleStream.Builder differences = DoubleStream.builder();
    for (List<Seat> seats : units) {
      for (int i = 0; i < seats.size(); i++) {
        for (int j = 0; j < i; j++) {
          differences.add(Math.abs(seats.get(i).levelDb - seats.get(j).levelDb));
        }
      }
    }
    double[] all = differences.build().toArray();
    return all.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(Scatter.ofPairs(all));
  }
}
