package org.twinrig.regression;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.twinrig.internal.Parallel;
import org.twinrig.study.PredictionModel;

/**
 * Chooses, band by band, the rule that predicts a unit; and does so again without each unit in
 * turn.
 *
 * <p>The candidate with the least mean of {@code ln MSE} over the bands within 1/6 octave is looked
 * at; where it is not offered at one of those bands the offset stands in for it there. It is taken
 * only if its gain over the offset, {@code g_i = mean over those bands of (r_offset,i² -
 * r_candidate,i²)}, has {@code mean(g) > sd(g)/√n}; otherwise the offset stands. A study that asks
 * for the window gets the candidate without that test.
 *
 * <p>Sources: Stone 1974, J. R. Stat. Soc. B 36:111 (choice by leaving out, and its assessment by
 * leaving out once more); Breiman, Friedman, Olshen and Stone 1984, Classification and Regression
 * Trees, 3.4.3 (one standard error).
 */
final class ModelChoice {
  /** Stands for the plain offset among the positions of candidates. */
  static final int OFFSET = -1;

  private final WindowData data;
  private final List<Optional<BandErrors>> errors;
  private final List<Candidate> candidates;
  private final Neighbourhood neighbourhood;
  private final PredictionModel model;
  private final int threads;

  /**
   * A choice among candidates.
   *
   * @param data the kind
   * @param errors one entry per band, empty where it has no estimate
   * @param candidates in the order in which ties are broken
   * @param model what the study asks for
   * @param threads how many threads; the outcome does not depend on it
   */
  ModelChoice(
      WindowData data,
      List<Optional<BandErrors>> errors,
      List<Candidate> candidates,
      PredictionModel model,
      int threads) {
    this.data = data;
    this.errors = errors;
    this.candidates = candidates;
    this.neighbourhood = Neighbourhood.of(errors, data.perOctave());
    this.model = model;
    this.threads = threads;
  }

  /** The rule for each band: a position among the candidates, or {@link #OFFSET}. */
  int[] chosen() {
    int[] chosen = new int[errors.size()];
    Arrays.setAll(chosen, b -> errors.get(b).isEmpty() ? OFFSET : chosen(b));
    return chosen;
  }

  /** The rule for each band and unit when that unit is left out from the start. */
  int[][] nested() {
    List<Integer> bands = IntStream.range(0, errors.size()).boxed().toList();
    int[][] least = Parallel.map(bands, threads, this::leastWithout).toArray(int[][]::new);
    if (model == PredictionModel.WINDOW) {
      return least;
    }
    return new NestedGate(data, errors, candidates, neighbourhood).passed(least, threads);
  }

  private int chosen(int b) {
    int least = OFFSET;
    double leastScore =
        model == PredictionModel.WINDOW ? Double.POSITIVE_INFINITY : score(b, OFFSET);
    for (int c = 0; c < candidates.size(); c++) {
      double score = errors.get(b).get().offers(c) ? score(b, c) : Double.POSITIVE_INFINITY;
      if (score < leastScore) {
        least = c;
        leastScore = score;
      }
    }
    boolean taken = least == OFFSET || model == PredictionModel.WINDOW || gains(b, least);
    return taken ? least : OFFSET;
  }

  private double score(int b, int candidate) {
    double sum = 0;
    for (int k : neighbourhood.of(b)) {
      sum += rule(k, candidate).logMse();
    }
    return sum / neighbourhood.of(b).length;
  }

  private BandErrors.Rule rule(int band, int candidate) {
    return errors.get(band).orElseThrow().rule(candidate);
  }

  /** Whether a candidate gains over the offset by more than one standard error. */
  private boolean gains(int b, int candidate) {
    int[] members = data.members(b);
    double[] gain = new double[members.length];
    for (int m = 0; m < members.length; m++) {
      int bands = 0;
      for (int k : neighbourhood.of(b)) {
        double offset = errors.get(k).get().offset().errors()[members[m]];
        double ridge = rule(k, candidate).errors()[members[m]];
        if (!Double.isNaN(offset)) {
          gain[m] += offset * offset - ridge * ridge;
          bands++;
        }
      }
      gain[m] /= bands;
    }
    return Gain.beyondOneStandardError(gain, gain.length);
  }

  /** For each unit, the candidate with the least smoothed criterion without it. */
  private int[] leastWithout(int b) {
    int[] least = new int[data.units()];
    Arrays.fill(least, OFFSET);
    if (errors.get(b).isEmpty() || errors.get(b).get().members() - 1 < BandErrors.FEWEST_UNITS) {
      return least;
    }
    double[] leastScore = new double[data.units()];
    if (model == PredictionModel.WINDOW) {
      Arrays.fill(leastScore, Double.POSITIVE_INFINITY);
    } else {
      addScores(b, OFFSET, leastScore);
    }
    double[] score = new double[data.units()];
    for (int c = 0; c < candidates.size(); c++) {
      if (errors.get(b).get().offers(c)) {
        Arrays.fill(score, 0);
        addScores(b, c, score);
        for (int i = 0; i < score.length; i++) {
          if (score[i] < leastScore[i]) {
            leastScore[i] = score[i];
            least[i] = c;
          }
        }
      }
    }
    return least;
  }

  private void addScores(int b, int candidate, double[] into) {
    for (int k : neighbourhood.of(b)) {
      double[] without = rule(k, candidate).logMseWithout();
      for (int i = 0; i < into.length; i++) {
        into[i] += without[i];
      }
    }
  }
}
