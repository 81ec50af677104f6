package org.twinrig.proof;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.twinrig.study.PredictionModel;

/**
 * Whether 95 % prediction intervals hold what they promise: for every number of units, kind and
 * sort of old graph, unseen units lie inside 93 % to 97 % of the time averaged over the bands, and
 * no less than 90 % of the time in any region.
 *
 * @param model the model
 * @param leastAveraged the row with the least coverage averaged over the bands
 * @param mostAveraged the row with the greatest coverage averaged over the bands
 * @param leastRegion the row with the least coverage of one region
 * @param breaches the rows that break the promise, in the order of the rows
 */
public record Promise(
    PredictionModel model,
    ProofRow leastAveraged,
    ProofRow mostAveraged,
    ProofRow leastRegion,
    List<Breach> breaches) {

  /** Averaged over the bands, at least this share inside. */
  public static final double LEAST_AVERAGED = 0.93;

  /** Averaged over the bands, at most this share inside. */
  public static final double MOST_AVERAGED = 0.97;

  /** In any region, at least this share inside. */
  public static final double LEAST_IN_A_REGION = 0.90;

  /** So many standard errors from the bound, chance alone is a poor explanation. */
  private static final double CHANCE = 2;

  /**
   * A row that breaks the promise.
   *
   * @param row the row
   * @param coverage its coverage
   * @param bound the bound it breaks
   */
  public record Breach(ProofRow row, Figure coverage, double bound) {
    /**
     * Whether the bound lies within two Monte Carlo standard errors, so that more studies are
     * needed to tell.
     *
     * @return true when chance could explain it
     */
    public boolean perhapsChance() {
      return Math.abs(coverage.value() - bound) <= CHANCE * coverage.monteCarloSe();
    }

    /**
     * Whether the coverage is too small rather than too great.
     *
     * @return true below a lower bound
     */
    public boolean below() {
      return coverage.value() < bound;
    }
  }

  /** Copies the breaches. */
  public Promise {
    breaches = List.copyOf(breaches);
  }

  /**
   * Whether no row breaks the promise.
   *
   * @return true when it is kept
   */
  public boolean kept() {
    return breaches.isEmpty();
  }

  static Promise judged(List<ProofRow> rows, PredictionModel model) {
    Comparator<ProofRow> byCoverage =
        Comparator.comparingDouble(r -> r.under(model).coverage().value());
    List<ProofRow> averaged =
        rows.stream().filter(r -> r.place().span().equals(Span.ALL_BANDS)).toList();
    List<ProofRow> regions = rows.stream().filter(r -> r.place().span().isRegion()).toList();
    List<Breach> breaches = new ArrayList<>();
    for (ProofRow row : rows) {
      Figure coverage = row.under(model).coverage();
      if (row.place().span().isRegion()) {
        if (coverage.value() < LEAST_IN_A_REGION) {
          breaches.add(new Breach(row, coverage, LEAST_IN_A_REGION));
        }
      } else if (row.place().span().equals(Span.ALL_BANDS)) {
        if (coverage.value() < LEAST_AVERAGED) {
          breaches.add(new Breach(row, coverage, LEAST_AVERAGED));
        } else if (coverage.value() > MOST_AVERAGED) {
          breaches.add(new Breach(row, coverage, MOST_AVERAGED));
        }
      }
    }
    return new Promise(
        model,
        averaged.stream().min(byCoverage).orElseThrow(),
        averaged.stream().max(byCoverage).orElseThrow(),
        regions.stream().min(byCoverage).orElseThrow(),
        breaches);
  }
}
