package org.twinrig.regression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.twinrig.internal.Parallel;

/**
 * Asks of every candidate that was found best without a unit whether it gains over the offset on
 * the other units, both the unit and the one that is judged being left out.
 *
 * <p>The errors with two units left out are many, so they are not kept from the search for the best
 * candidate but made anew for the few that are asked for.
 */
final class NestedGate {
  /** Units are handled in groups of this size: the room needed is group × units × bands. */
  private static final int GROUP = 32;

  private final WindowData data;
  private final List<Optional<BandErrors>> errors;
  private final List<Candidate> candidates;
  private final Neighbourhood neighbourhood;

  NestedGate(
      WindowData data,
      List<Optional<BandErrors>> errors,
      List<Candidate> candidates,
      Neighbourhood neighbourhood) {
    this.data = data;
    this.errors = errors;
    this.candidates = candidates;
    this.neighbourhood = neighbourhood;
  }

  /**
   * The candidates that pass; the offset in place of those that do not.
   *
   * @param least {@code [band][unit]}, a position among the candidates or the offset
   */
  int[][] passed(int[][] least, int threads) {
    List<Integer> starts = new ArrayList<>();
    for (int i = 0; i < data.units(); i += GROUP) {
      starts.add(i);
    }
    List<Group> groups = Parallel.map(starts, threads, start -> new Group(start, least).judge());
    int[][] passed = new int[least.length][data.units()];
    for (Group group : groups) {
      group.copyInto(passed);
    }
    return passed;
  }

  /** Some units, each left out in turn. */
  private final class Group {
    private final int start;
    private final int size;
    private final int[][] least;

    /** {@code [unit of the group][band][other unit]}, summed over bands; null where not asked. */
    private final double[][][] gains;

    private final double[] onPartner;
    private final double[] onUnit;

    Group(int start, int[][] least) {
      this.start = start;
      this.size = Math.min(GROUP, data.units() - start);
      this.least = least;
      this.gains = new double[size][least.length][];
      this.onPartner = new double[data.units()];
      this.onUnit = new double[data.units()];
    }

    Group judge() {
      for (int g = 0; g < size; g++) {
        for (int b = 0; b < least.length; b++) {
          if (least[b][start + g] != ModelChoice.OFFSET) {
            gains[g][b] = new double[data.units()];
          }
        }
      }
      for (int k = 0; k < least.length; k++) {
        if (errors.get(k).isPresent()) {
          addBand(k);
        }
      }
      return this;
    }

    /** Adds what band {@code k} says about every choice it counts for. */
    private void addBand(int k) {
      WindowShape shape = null;
      WindowDeletion deletion = null;
      for (var wanted : wantedAt(k).entrySet()) {
        Candidate candidate = candidates.get(wanted.getKey());
        if (!candidate.shape().equals(shape)) {
          shape = candidate.shape();
          deletion = new WindowDeletion(StackedWindow.of(data, k, shape).orElseThrow());
        }
        BlockDeletion blocks = deletion.at(candidate.kappa());
        for (int unit : wanted.getValue()) {
          addUnit(k, wanted.getKey(), unit, blocks);
        }
      }
    }

    /** The candidates that a neighbour of band {@code k} asks for, with the units left out. */
    private SortedMap<Integer, List<Integer>> wantedAt(int k) {
      SortedMap<Integer, List<Integer>> wanted = new TreeMap<>();
      for (int g = 0; g < size; g++) {
        int unit = start + g;
        for (int b : neighbourhood.of(k)) {
          int c = least[b][unit];
          if (c != ModelChoice.OFFSET && errors.get(k).get().offers(c)) {
            List<Integer> units = wanted.computeIfAbsent(c, x -> new ArrayList<>());
            if (units.isEmpty() || units.get(units.size() - 1) != unit) {
              units.add(unit);
            }
          }
        }
      }
      return wanted;
    }

    private void addUnit(int k, int candidate, int unit, BlockDeletion blocks) {
      int[] members = data.members(k);
      int position = Arrays.binarySearch(members, unit);
      double[] offsets = new double[members.length];
      if (position < 0) {
        for (int m = 0; m < members.length; m++) {
          onPartner[m] = blocks.withoutOne(m);
          offsets[m] = errors.get(k).get().offset().errors()[members[m]];
        }
      } else if (members.length - 1 >= BandErrors.FEWEST_UNITS) {
        blocks.withoutTwo(position, 0, onPartner, onUnit);
        offsetsWithout(k, members, position, offsets);
      } else {
        return;
      }
      for (int b : neighbourhood.of(k)) {
        if (least[b][unit] == candidate) {
          double[] into = gains[unit - start][b];
          for (int m = 0; m < members.length; m++) {
            into[members[m]] += offsets[m] * offsets[m] - onPartner[m] * onPartner[m];
          }
        }
      }
    }

    /** Errors of the mean of the units left when one of them and {@code without} are out. */
    private void offsetsWithout(int k, int[] members, int without, double[] offsets) {
      int n = members.length;
      double sum = 0;
      for (int m = 0; m < n; m++) {
        sum += m == without ? 0 : data.difference(k, members[m]);
      }
      double mean = sum / (n - 1);
      for (int m = 0; m < n; m++) {
        offsets[m] = (data.difference(k, members[m]) - mean) * (n - 1) / (n - 2);
      }
    }

    void copyInto(int[][] passed) {
      double[] gain = new double[data.units()];
      for (int g = 0; g < size; g++) {
        for (int b = 0; b < least.length; b++) {
          int unit = start + g;
          boolean taken = gains[g][b] != null && gainsAt(b, unit, gains[g][b], gain);
          passed[b][unit] = taken ? least[b][unit] : ModelChoice.OFFSET;
        }
      }
    }

    private boolean gainsAt(int b, int unit, double[] sums, double[] gain) {
      int others = 0;
      for (int member : data.members(b)) {
        if (member != unit) {
          gain[others++] = sums[member] / bandsWith(b, member);
        }
      }
      return Gain.beyondOneStandardError(gain, others);
    }

    private int bandsWith(int b, int member) {
      int bands = 0;
      for (int k : neighbourhood.of(b)) {
        bands += Double.isNaN(data.difference(k, member)) ? 0 : 1;
      }
      return bands;
    }
  }
}
