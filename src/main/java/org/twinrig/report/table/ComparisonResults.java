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
          "kind, pair of studies and band with an estimate in both",
          Columns.<Between>start()
              .text("kind", b -> b.pair.difference().kind())
              .text("first", b -> b.pair.first())
              .text("second", b -> b.pair.second())
              .help("the studies by title; by folder as well where titles are alike")
              .hz("band_hz", b -> b.at.band().midHz())
              .count("units_first", b -> b.pair.unitsFirst())
              .count("units_second", b -> b.pair.unitsSecond())
              .help("of the kind")
              .number("difference_db", b -> b.at.differenceDb())
              .help("mean transfer of the first less that of the second")
              .number("se_db", b -> b.at.standardErrorDb())
              .number("degrees_of_freedom", b -> b.at.degreesOfFreedom())
              .help("no whole number")
              .interval("ci_%s_db", b -> b.at.differenceDb(), b -> b.at.halfDb())
              .help("at this band alone")
              .interval("sim_%s_db", b -> b.at.differenceDb(), b -> b.at.simultaneousHalfDb())
              .word("different", b -> b.at.different())
              .help("the simultaneous interval leaves out 0")
              .word("equivalent", b -> b.at.equivalentAlone())
              .help("within *equivalence_db*, at this band by itself")
              .word("equivalent_at_once", b -> b.at.equivalent())
              .help("the same at all bands at once"),
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
          "kind and band with an estimate in two studies or more",
          Columns.<Combined>start()
              .text("kind", Combined::kind)
              .hz("band_hz", c -> c.at.band().midHz())
              .count("studies", c -> c.at.studies())
              .count("units", c -> c.at.units())
              .help("of these studies together")
              .number("mean_db", c -> c.at.meanDb())
              .help("mean transfer over studies")
              .number("se_db", c -> c.at.standardErrorDb())
              .number("tau_db", c -> c.at.tauDb())
              .help("standard deviation between studies")
              .interval("ci_%s_db", c -> c.at.meanDb(), c -> c.at.halfDb())
              .interval("further_%s_db", c -> c.at.meanDb(), c -> c.at.furtherHalfDb())
              .help("where the mean transfer of a further lab is expected"),
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
