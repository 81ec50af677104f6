package org.twinrig.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.twinrig.band.Band;
import org.twinrig.evidence.Region;
import org.twinrig.internal.Checks;

/**
 * What one study adds to the figures, under both models: sums over judgements, by {@link Cell}.
 *
 * @param offset sums under the plain offset
 * @param tried sums under the model that is tried beside it
 */
record IntervalTally(Map<Cell, Sums> offset, Map<Cell, Sums> tried) {

  /**
   * One band of one unit that no fit saw.
   *
   * @param kind the unit's kind
   * @param graphSeatings how many seatings its old graph averages
   * @param band the band
   * @param errorDb level of the re-capture minus predicted level, dB
   * @param halfDb half-width of the prediction interval, dB
   */
  record Judgement(String kind, int graphSeatings, Band band, double errorDb, double halfDb) {
    Judgement {
      Checks.finite(errorDb, "an error in dB");
      Checks.notNegative(halfDb, "a prediction half-width in dB");
    }

    boolean inside() {
      return Math.abs(errorDb) <= halfDb;
    }

    /** Whether the re-capture lies below the interval. */
    boolean below() {
      return errorDb < -halfDb;
    }
  }

  /** What is counted apart within a study. */
  record Cell(String kind, int graphSeatings, Region region) {}

  /**
   * Sums over judgements.
   *
   * @param judgements how many
   * @param squaresDb2 sum of squared errors, dB²
   * @param inside how many errors lie inside their interval
   * @param below how many re-captures lie below their interval
   * @param halvesDb sum of half-widths, dB
   */
  record Sums(long judgements, double squaresDb2, long inside, long below, double halvesDb) {
    static final Sums NONE = new Sums(0, 0, 0, 0, 0);

    static Sums of(Judgement j) {
      return new Sums(
          1, j.errorDb() * j.errorDb(), j.inside() ? 1 : 0, j.below() ? 1 : 0, j.halfDb());
    }

    Sums plus(Sums other) {
      return new Sums(
          judgements + other.judgements,
          squaresDb2 + other.squaresDb2,
          inside + other.inside,
          below + other.below,
          halvesDb + other.halvesDb);
    }
  }

  /**
   * Figures of many studies under one model.
   *
   * @param rmsDb root mean square error on unseen units, dB
   * @param coverage share of unseen units, band by band, inside their prediction interval
   * @param below share of re-captures that lie below the interval; with an even spread half of what
   *     is not inside
   * @param halfDb mean half-width of the prediction interval, dB
   */
  record Figures(Clustered rmsDb, Clustered coverage, Clustered below, Clustered halfDb) {
    private static Figures of(List<Sums> studies) {
      double[] judgements = column(studies, Sums::judgements);
      return new Figures(
          Clustered.ratio(column(studies, Sums::squaresDb2), judgements).squareRoot(),
          Clustered.ratio(column(studies, Sums::inside), judgements),
          Clustered.ratio(column(studies, Sums::below), judgements),
          Clustered.ratio(column(studies, Sums::halvesDb), judgements));
    }

    private static double[] column(List<Sums> studies, ToDoubleFunction<Sums> value) {
      return studies.stream().mapToDouble(value).toArray();
    }

    private static Figures mean(List<Figures> parts) {
      return new Figures(
          Clustered.mean(parts.stream().map(Figures::rmsDb).toList()),
          Clustered.mean(parts.stream().map(Figures::coverage).toList()),
          Clustered.mean(parts.stream().map(Figures::below).toList()),
          Clustered.mean(parts.stream().map(Figures::halfDb).toList()));
    }
  }

  /** Sums judgements by cell; a band outside every region counts nowhere. */
  static Map<Cell, Sums> sums(List<Judgement> judgements) {
    Map<Cell, Sums> sums = new HashMap<>();
    for (Judgement j : judgements) {
      for (Region region : Region.values()) {
        if (region.holds(j.band())) {
          sums.merge(new Cell(j.kind(), j.graphSeatings(), region), Sums.of(j), Sums::plus);
        }
      }
    }
    return sums;
  }

  /**
   * The rows of one kind and sort of old graph: the regions, all judgements together, and the plain
   * mean of the regions' figures.
   *
   * @param units of each kind that entered each fit
   * @param studies one tally each
   */
  static List<IntervalProof.Row> rows(
      int units, List<IntervalTally> studies, String kind, int graphSeatings) {
    List<Cell> cells =
        Arrays.stream(Region.values()).map(r -> new Cell(kind, graphSeatings, r)).toList();
    List<IntervalProof.Row> rows = new ArrayList<>();
    for (Cell cell : cells) {
      String region = cell.region().word();
      rows.add(
          row(new IntervalProof.Case(units, kind, graphSeatings, region), studies, List.of(cell)));
    }
    List<IntervalProof.Row> regions = List.copyOf(rows);
    IntervalProof.Row all =
        row(
            new IntervalProof.Case(units, kind, graphSeatings, IntervalProof.ALL_BANDS),
            studies,
            cells);
    rows.add(all);
    rows.add(
        new IntervalProof.Row(
            new IntervalProof.Case(units, kind, graphSeatings, IntervalProof.MEAN_OF_REGIONS),
            studies.size(),
            all.judgements(),
            Figures.mean(regions.stream().map(IntervalProof.Row::offset).toList()),
            Figures.mean(regions.stream().map(IntervalProof.Row::tried).toList())));
    return rows;
  }

  private static IntervalProof.Row row(
      IntervalProof.Case of, List<IntervalTally> studies, List<Cell> cells) {
    List<Sums> offset = perStudy(studies, IntervalTally::offset, cells);
    List<Sums> tried = perStudy(studies, IntervalTally::tried, cells);
    long judgements = offset.stream().mapToLong(Sums::judgements).sum();
    if (judgements != tried.stream().mapToLong(Sums::judgements).sum()) {
      throw new IllegalStateException("both models must be tried on the same units and bands");
    }
    return new IntervalProof.Row(
        of, studies.size(), judgements, Figures.of(offset), Figures.of(tried));
  }

  private static List<Sums> perStudy(
      List<IntervalTally> studies,
      Function<IntervalTally, Map<Cell, Sums>> model,
      List<Cell> cells) {
    return studies.stream()
        .map(model)
        .map(
            sums ->
                cells.stream()
                    .map(cell -> sums.getOrDefault(cell, Sums.NONE))
                    .reduce(Sums.NONE, Sums::plus))
        .toList();
  }
}
