package org.twinrig.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Unit;
import org.twinrig.response.Levels;

/**
 * Averages anchored captures into units: sides of a seating in dB, then seatings of a unit in dB,
 * and pools the variance between seatings.
 *
 * <p>{@code s2_g(b) = Σ_i Σ_s (y_igs - ybar_ig)² / Σ_i (n_ig - 1)} over the units that have an
 * accepted seating on each fixture at the band; a unit seated on one fixture only does not count.
 * Missing data: a seating's level at a band is the mean of the sides that have one; a unit's is the
 * mean of the seatings that have one.
 */
public final class Pairing {
  private final Study study;

  /** Pairs the captures of a study. */
  public Pairing(Study study) {
    this.study = study;
  }

  /**
   * The paired units of a role, per kind that has a pair, in the order in which the kinds first
   * stand in the table of units; of the captures that are to count, all on one grid.
   */
  public List<PairedUnits> pair(List<AnchoredCapture> accepted, Unit.Role role) {
    if (accepted.isEmpty()) {
      return List.of();
    }
    BandGrid grid = accepted.get(0).levels().grid();
    Map<String, SeatedUnit> from = seated(accepted, study.from().name());
    Map<String, SeatedUnit> to = seated(accepted, study.to().name());
    Map<String, List<String>> byKind = new LinkedHashMap<>();
    for (Unit unit : study.units()) {
      if (unit.role() == role && from.containsKey(unit.name()) && to.containsKey(unit.name())) {
        byKind.computeIfAbsent(unit.kind(), k -> new ArrayList<>()).add(unit.name());
      }
    }
    List<PairedUnits> paired = new ArrayList<>();
    byKind.forEach(
        (kind, names) -> {
          List<SeatedUnit> old = names.stream().map(from::get).toList();
          List<SeatedUnit> now = names.stream().map(to::get).toList();
          paired.add(
              new PairedUnits(
                  kind, grid, names, onFixture(grid, old, now), onFixture(grid, now, old)));
        });
    return paired;
  }

  private static Map<String, SeatedUnit> seated(List<AnchoredCapture> captures, String fixture) {
    Map<String, TreeMap<Integer, List<Levels>>> sides = new LinkedHashMap<>();
    for (AnchoredCapture c : captures) {
      if (c.capture().entry().fixture().equals(fixture)) {
        sides
            .computeIfAbsent(c.capture().entry().unit(), u -> new TreeMap<>())
            .computeIfAbsent(c.capture().entry().seating(), s -> new ArrayList<>())
            .add(c.levels());
      }
    }
    Map<String, SeatedUnit> units = new LinkedHashMap<>();
    sides.forEach(
        (unit, seatings) ->
            units.put(
                unit, SeatedUnit.of(seatings.values().stream().map(SeatedUnit::mean).toList())));
    return units;
  }

  private static PairedUnits.OnFixture onFixture(
      BandGrid grid, List<SeatedUnit> units, List<SeatedUnit> partners) {
    double[] squares = new double[grid.size()];
    int[] freedom = new int[grid.size()];
    for (int b = 0; b < grid.size(); b++) {
      for (int i = 0; i < units.size(); i++) {
        if (units.get(i).mean.has(b) && partners.get(i).mean.has(b)) {
          squares[b] += units.get(i).squares[b];
          freedom[b] += units.get(i).counts[b] - 1;
        }
      }
    }
    double[] variance = new double[grid.size()];
    Arrays.setAll(variance, b -> freedom[b] == 0 ? Double.NaN : squares[b] / freedom[b]);
    return new PairedUnits.OnFixture(
        units.stream().map(u -> u.mean).toList(),
        units.stream().map(u -> Arrays.stream(u.counts).boxed().toList()).toList(),
        Levels.copyOf(grid, variance),
        units.stream().map(u -> u.seatings).toList());
  }

  /** One unit on one fixture: mean over seatings, their number, and the squares about the mean. */
  @SuppressWarnings("ArrayRecordComponent") // compared with nothing
  private record SeatedUnit(List<Levels> seatings, Levels mean, int[] counts, double[] squares) {

    static SeatedUnit of(List<Levels> seatings) {
      Levels mean = mean(seatings);
      int[] counts = new int[mean.grid().size()];
      double[] squares = new double[mean.grid().size()];
      for (Levels seating : seatings) {
        for (int b = 0; b < counts.length; b++) {
          if (seating.has(b)) {
            double deviation = seating.db(b) - mean.db(b);
            counts[b]++;
            squares[b] += deviation * deviation;
          }
        }
      }
      return new SeatedUnit(seatings, mean, counts, squares);
    }

    /** Mean in dB per band over the curves that have a level there. */
    static Levels mean(List<Levels> curves) {
      BandGrid grid = curves.get(0).grid();
      double[] means = new double[grid.size()];
      BitSet coarse = new BitSet();
      for (int b = 0; b < means.length; b++) {
        double sum = 0;
        int count = 0;
        for (Levels curve : curves) {
          if (curve.has(b)) {
            sum += curve.db(b);
            count++;
            coarse.set(b, coarse.get(b) || curve.isCoarse(b));
          }
        }
        means[b] = count == 0 ? Double.NaN : sum / count;
      }
      return Levels.copyOf(grid, means, coarse);
    }
  }
}
