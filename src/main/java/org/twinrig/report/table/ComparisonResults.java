package org.twinrig.report.table;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.StudyComparison;
import org.twinrig.evidence.CombinedTransfer;
import org.twinrig.evidence.MeanDifference;

/** The tables of studies held against each other. */
public final class ComparisonResults {
  private ComparisonResults() {}

  private record Between(StudyComparison.Pair pair, MeanDifference.Verdict at) {}

  private static final Result<StudyComparison> DIFFERENCES =
      Result.of(
          "comparison.csv",
          Columns.<Between>start()
              .text("kind", b -> b.pair.difference().kind())
              .text("first", b -> b.pair.first())
              .text("second", b -> b.pair.second())
              .hz("band_hz", b -> b.at.band().midHz())
              .count("units_first", b -> b.pair.unitsFirst())
              .count("units_second", b -> b.pair.unitsSecond())
              .number("difference_db", b -> b.at.differenceDb())
              .number("se_db", b -> b.at.standardErrorDb())
              .number("degrees_of_freedom", b -> b.at.degreesOfFreedom())
              .interval("ci_%s_db", b -> b.at.differenceDb(), b -> b.at.halfDb())
              .interval("sim_%s_db", b -> b.at.differenceDb(), b -> b.at.simultaneousHalfDb())
              .word("different", b -> b.at.different())
              .word("equivalent", b -> b.at.equivalentAlone())
              .word("equivalent_at_once", b -> b.at.equivalent()),
          comparison ->
              comparison.kinds().stream()
                  .flatMap(k -> k.pairs().stream())
                  .flatMap(
                      p ->
                          p.difference().bands().stream()
                              .flatMap(Optional::stream)
                              .map(v -> new Between(p, v))));

  private record Combined(String kind, CombinedTransfer.Combined at) {}

  private static final Result<StudyComparison> COMBINED =
      Result.of(
          "combined.csv",
          Columns.<Combined>start()
              .text("kind", Combined::kind)
              .hz("band_hz", c -> c.at.band().midHz())
              .count("studies", c -> c.at.studies())
              .count("units", c -> c.at.units())
              .number("mean_db", c -> c.at.meanDb())
              .number("se_db", c -> c.at.standardErrorDb())
              .number("tau_db", c -> c.at.tauDb())
              .interval("ci_%s_db", c -> c.at.meanDb(), c -> c.at.halfDb())
              .interval("further_%s_db", c -> c.at.meanDb(), c -> c.at.furtherHalfDb()),
          comparison ->
              comparison.kinds().stream()
                  .flatMap(
                      k ->
                          k.combined().bands().stream()
                              .flatMap(Optional::stream)
                              .map(c -> new Combined(k.kind(), c))));

  /** All of them, in the order of the manual. */
  static final List<Result<?>> ALL = List.of(DIFFERENCES, COMBINED);

  public static void write(StudyComparison comparison, Path folder) throws IOException {
    DIFFERENCES.write(folder, comparison);
    COMBINED.write(folder, comparison);
  }
}
