package org.twinrig.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
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
public record Pairing(Study study) {

  /**
   * The paired units of a role, per kind that has a pair, in the order in which the kinds first
   * stand in the table of units; of the captures that are to count, all on one grid.
   */
  public List<PairedUnits> pair(List<AnchoredCapture> accepted, Unit.Role role) {
    if (accepted.isEmpty()) {
      return List.of();
    }
    BandGrid grid = accepted.get(0).levels().grid();
    Map<String, List<Levels>> from = seatings(accepted, study.from().name());
    Map<String, List<Levels>> to = seatings(accepted, study.to().name());
    Map<String, List<String>> byKind = new LinkedHashMap<>();
    for (Unit unit : study.units()) {
      if (unit.role() == role && from.containsKey(unit.name()) && to.containsKey(unit.name())) {
        byKind.computeIfAbsent(unit.kind(), k -> new ArrayList<>()).add(unit.name());
      }
    }
    List<PairedUnits> paired = new ArrayList<>();
    byKind.forEach(
        (kind, names) -> {
          List<List<Levels>> old = names.stream().map(from::get).toList();
          List<List<Levels>> now = names.stream().map(to::get).toList();
          List<Levels> oldMeans = old.stream().map(Pairing::mean).toList();
          List<Levels> nowMeans = now.stream().map(Pairing::mean).toList();
          paired.add(
              new PairedUnits(
                  kind,
                  grid,
                  names,
                  onFixture(grid, old, oldMeans, nowMeans),
                  onFixture(grid, now, nowMeans, oldMeans)));
        });
    return paired;
  }

  /**
   * What the old fixture showed of a unit: its mean level over that many accepted seatings, pinned.
   *
   * @param files the content of its captures, each as a hexadecimal SHA-256
   */
  public record OnOldFixture(Unit unit, Levels mean, int seatings, Set<String> files) {
    public OnOldFixture {
      files = Set.copyOf(files);
    }
  }

  /** Every unit with an accepted capture on the old fixture, whatever its role. */
  public List<OnOldFixture> onOldFixture(List<AnchoredCapture> accepted) {
    String old = study.from().name();
    Map<String, List<Levels>> seatings = seatings(accepted, old);
    Map<String, Set<String>> files = new HashMap<>();
    accepted.stream()
        .filter(a -> a.entry().fixture().equals(old))
        .forEach(
            a ->
                files
                    .computeIfAbsent(a.entry().unit(), u -> new HashSet<>())
                    .add(a.capture().sha256()));
    return study.units().stream()
        .filter(unit -> seatings.containsKey(unit.name()))
        .map(
            unit -> {
              List<Levels> own = seatings.get(unit.name());
              return new OnOldFixture(unit, mean(own), own.size(), files.get(unit.name()));
            })
        .toList();
  }

  /** The seatings of each unit on a fixture, by rising number, their sides averaged. */
  private static Map<String, List<Levels>> seatings(
      List<AnchoredCapture> captures, String fixture) {
    Map<String, TreeMap<Integer, List<Levels>>> sides = new LinkedHashMap<>();
    for (AnchoredCapture c : captures) {
      if (c.entry().fixture().equals(fixture)) {
        sides
            .computeIfAbsent(c.entry().unit(), u -> new TreeMap<>())
            .computeIfAbsent(c.entry().seating(), s -> new ArrayList<>())
            .add(c.levels());
      }
    }
    Map<String, List<Levels>> units = new LinkedHashMap<>();
    sides.forEach(
        (unit, seatings) ->
            units.put(unit, seatings.values().stream().map(Pairing::mean).toList()));
    return units;
  }

  private static PairedUnits.OnFixture onFixture(
      BandGrid grid, List<List<Levels>> curves, List<Levels> means, List<Levels> partners) {
    List<List<Integer>> counts = new ArrayList<>();
    double[] pooled = new double[grid.size()];
    int[] freedom = new int[grid.size()];
    for (int i = 0; i < curves.size(); i++) {
      Integer[] seatings = new Integer[grid.size()];
      for (int b = 0; b < grid.size(); b++) {
        double squares = 0;
        int count = 0;
        for (Levels curve : curves.get(i)) {
          if (curve.has(b)) {
            double deviation = curve.db(b) - means.get(i).db(b);
            squares += deviation * deviation;
            count++;
          }
        }
        seatings[b] = count;
        if (means.get(i).has(b) && partners.get(i).has(b)) {
          pooled[b] += squares;
          freedom[b] += count - 1;
        }
      }
      counts.add(List.of(seatings));
    }
    Arrays.setAll(pooled, b -> freedom[b] == 0 ? Double.NaN : pooled[b] / freedom[b]);
    return new PairedUnits.OnFixture(means, counts, Levels.copyOf(grid, pooled), curves);
  }

  /** Mean in dB per band over the curves that have a level there. */
  private static Levels mean(List<Levels> curves) {
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
