package org.twinrig.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.twinrig.evidence.Region;
import org.twinrig.proof.StudyTally.Cell;
import org.twinrig.proof.StudyTally.Sums;

/**
 * Gathers the studies of one number of units into rows: over all judgements for a region and for
 * all bands, and the plain mean of the regions' figures.
 *
 * @param units of each kind that entered each fit
 * @param tallies one per study
 */
record Gathering(int units, List<StudyTally> tallies) {

  /** The rows of one kind and sort of old graph. */
  List<ProofRow> rows(String kind, int graphSeatings) {
    List<ProofRow> rows = new ArrayList<>();
    List<Figures> regions = new ArrayList<>();
    for (Region region : Region.values()) {
      Figures figures = figures(List.of(new Cell(kind, graphSeatings, region)));
      regions.add(figures);
      rows.add(row(kind, graphSeatings, Span.of(region), figures));
    }
    List<Cell> all =
        Arrays.stream(Region.values()).map(r -> new Cell(kind, graphSeatings, r)).toList();
    rows.add(row(kind, graphSeatings, Span.ALL_BANDS, figures(all)));
    rows.add(row(kind, graphSeatings, Span.MEAN_OF_REGIONS, Figures.mean(regions)));
    return rows;
  }

  private ProofRow row(String kind, int graphSeatings, Span span, Figures figures) {
    return new ProofRow(
        new ProofRow.Place(units, kind, graphSeatings, span),
        tallies.size(),
        figures.judgements,
        figures.offset.row(),
        figures.tried.row(),
        figures.tried.rmsDb.over(figures.offset.rmsDb).figure());
  }

  private Figures figures(List<Cell> cells) {
    List<Sums> offset = perStudy(StudyTally::offset, cells);
    List<Sums> tried = perStudy(StudyTally::tried, cells);
    long judgements = offset.stream().mapToLong(Sums::judgements).sum();
    if (judgements != tried.stream().mapToLong(Sums::judgements).sum()) {
      throw new IllegalStateException("both models must be tried on the same units and bands");
    }
    return new Figures(judgements, ModelFigures.of(offset), ModelFigures.of(tried));
  }

  private List<Sums> perStudy(Function<StudyTally, Map<Cell, Sums>> model, List<Cell> cells) {
    return tallies.stream()
        .map(model)
        .map(
            sums ->
                cells.stream()
                    .map(cell -> sums.getOrDefault(cell, Sums.NONE))
                    .reduce(Sums.NONE, Sums::plus))
        .toList();
  }

  private record Figures(long judgements, ModelFigures offset, ModelFigures tried) {
    static Figures mean(List<Figures> parts) {
      return new Figures(
          parts.stream().mapToLong(Figures::judgements).sum(),
          ModelFigures.mean(parts.stream().map(Figures::offset).toList()),
          ModelFigures.mean(parts.stream().map(Figures::tried).toList()));
    }
  }

  private record ModelFigures(
      Clustered rmsDb, Clustered coverage, Clustered below, Clustered halfDb) {
    static ModelFigures of(List<Sums> studies) {
      double[] judgements = column(studies, Sums::judgements);
      return new ModelFigures(
          Clustered.ratio(column(studies, Sums::squaresDb2), judgements).squareRoot(),
          Clustered.ratio(column(studies, Sums::inside), judgements),
          Clustered.ratio(column(studies, Sums::below), judgements),
          Clustered.ratio(column(studies, Sums::halvesDb), judgements));
    }

    static ModelFigures mean(List<ModelFigures> parts) {
      return new ModelFigures(
          Clustered.mean(parts.stream().map(ModelFigures::rmsDb).toList()),
          Clustered.mean(parts.stream().map(ModelFigures::coverage).toList()),
          Clustered.mean(parts.stream().map(ModelFigures::below).toList()),
          Clustered.mean(parts.stream().map(ModelFigures::halfDb).toList()));
    }

    ProofRow.ByModel row() {
      return new ProofRow.ByModel(rmsDb.figure(), coverage.figure(), below.value(), halfDb.value());
    }

    private static double[] column(List<Sums> studies, ToDoubleFunction<Sums> value) {
      return studies.stream().mapToDouble(value).toArray();
    }
  }
}
