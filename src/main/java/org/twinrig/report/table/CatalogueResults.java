package org.twinrig.report.table;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.doubt.Doubt;
import org.twinrig.evidence.UnitsToMeasure;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Smoothing;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Continuity;
import org.twinrig.translation.GraphPoints;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.TranslatedReference;
import org.twinrig.translation.Treatment;

/** The tables of a re-expressed catalogue, and of a re-expressed reference. */
public final class CatalogueResults {
  private CatalogueResults() {}

  /** A row of a graph's own file, which says in every row how its level is to be taken. */
  private record Levelled<R>(R row, CatalogueEntry.Level level) {
    static <R> Stream<Levelled<R>> of(List<R> rows, CatalogueEntry.Level level) {
      return rows.stream().map(row -> new Levelled<>(row, level));
    }

    static <R> Columns<Levelled<R>> columns(Columns<R> columns) {
      return Columns.<Levelled<R>>start()
          .all(Levelled::row, columns)
          .word("level", l -> l.level.word());
    }
  }

  public static final Result<TranslatedGraph> GRAPH =
      Result.of(
          "translated/<graph>.csv",
          Levelled.columns(
              Columns.<TranslatedBand>start()
                  .hz("band_hz", b -> b.band().midHz())
                  .number("from_db", TranslatedBand::fromDb)
                  .part(
                      TranslatedBand::predicted,
                      predicted ->
                          predicted
                              .number("to_db", p -> p.toDb())
                              .number("low_db", p -> p.lowDb())
                              .number("high_db", p -> p.highDb())
                              .interval("whole_%s_db", p -> p.toDb(), p -> p.whole().halfDb()))
                  .word("mark", b -> b.mark().word())
                  .word("reasons", b -> Reason.join(b.reasons()))),
          graph -> Levelled.of(graph.bands(), graph.treatment().level()));

  public static final Result<GraphPoints> POINTS =
      Result.of(
          "points/<graph>.csv",
          Levelled.columns(
              Columns.<GraphPoints.Point>start()
                  .hz("frequency_hz", p -> p.frequencyHz())
                  .part(
                      GraphPoints.Point::said,
                      said ->
                          said.number("level_db", s -> s.levelDb())
                              .interval("%s_db", s -> s.levelDb(), s -> s.halfDb())
                              .word("mark", s -> s.mark().word()))),
          points -> Levelled.of(points.points(), points.level()));

  public static final Result<CatalogueRun.Outcome> SUMMARY =
      Result.of(
          "summary.csv",
          Columns.<CatalogueRun.Line>start()
              .text("graph", l -> l.entry().graph())
              .text("unit", l -> l.entry().unit())
              .text("kind", l -> l.entry().kind())
              .word("decision", l -> l.decision().word())
              .number("reliable_octaves", l -> l.octaves().reliable())
              .number("caution_octaves", l -> l.octaves().caution())
              .number("unreliable_octaves", l -> l.octaves().unreliable())
              .number("missing_octaves", l -> l.octaves().missing())
              .number("largest_step_db", l -> l.largestStepDb())
              .word("reasons", l -> Reason.join(l.reasons()))
              .word("doubts", l -> open(l.doubts())),
          outcome -> outcome.lines().stream());

  private static String open(List<Doubt> doubts) {
    return doubts.stream()
        .filter(Doubt::isOpen)
        .map(Doubt::doubt)
        .collect(Collectors.joining("; "));
  }

  public static final Result<CatalogueRun.Outcome> HANDLING =
      Result.of(
          "handling.csv",
          Columns.<CatalogueRun.Line>start()
              .text("graph", l -> l.entry().graph())
              .text("file", l -> l.entry().file())
              .word("sha256", l -> l.fileSha256())
              .count("seatings_taken", l -> l.entry().averaged().taken())
              .count("sides", l -> l.entry().averaged().sides())
              .word("averaging", l -> l.treatment().averaging(l.entry().averaged().how()))
              .word("level_from", l -> l.entry().level().word())
              .word("level_to", l -> l.treatment().level().word())
              .text("drive", l -> l.entry().drive())
              .number("level_shift_db", l -> l.treatment().levelShiftDb())
              .word("form_from", l -> form(l.treatment().before()))
              .word("form_to", l -> form(l.treatment().now()))
              .word("smoothing", l -> l.entry().smoothing().map(Smoothing::word))
              .word("smoothing_match", l -> l.treatment().smoothing().word())
              .text("old_reference", l -> l.treatment().before().map(Treatment.Reference::file))
              .word("old_reference_smoothing", l -> smoothing(l.treatment().before()))
              .text("new_reference", l -> l.treatment().now().map(Treatment.Reference::file))
              .word("new_reference_smoothing", l -> smoothing(l.treatment().now()))
              .number("change_rms_db", l -> l.change().totalRmsDb())
              .number("fixture_change_rms_db", l -> l.change().fixtureRmsDb())
              .number("reference_change_rms_db", l -> l.change().referenceRmsDb()),
          outcome -> outcome.lines().stream());

  private static String form(Optional<Treatment.Reference> reference) {
    return reference.isPresent() ? "compensated" : "raw";
  }

  private static Optional<String> smoothing(Optional<Treatment.Reference> reference) {
    return reference.flatMap(Treatment.Reference::smoothing).map(Smoothing::word);
  }

  public static final Result<CatalogueOverview> OVERVIEW =
      Result.of(
          "overview.csv",
          Columns.<CatalogueOverview.Decided>start()
              .text("kind", d -> d.kind())
              .word("decision", d -> d.decision().word())
              .count("graphs", d -> d.graphs())
              .number("mean_reliable_octaves", d -> d.octaves().get(0))
              .number("mean_caution_octaves", d -> d.octaves().get(1))
              .number("mean_unreliable_octaves", d -> d.octaves().get(2))
              .number("mean_missing_octaves", d -> d.octaves().get(3)),
          overview -> overview.decisions().stream());

  public static final Result<CatalogueOverview> OVERVIEW_ZONES =
      Result.of(
          "overview-zones.csv",
          Columns.<CatalogueOverview.ZoneShare>start()
              .text("kind", z -> z.kind())
              .hz("from_hz", z -> z.zone().fromHz())
              .hz("to_hz", z -> z.zone().toHz())
              .word("mark_in_study", z -> z.zone().mark().word())
              .word("reasons_in_study", z -> Reason.join(z.zone().reasons()))
              .count("graphs", z -> z.graphs())
              .number("reliable_share", z -> z.shares().get(0))
              .number("caution_share", z -> z.shares().get(1))
              .number("unreliable_share", z -> z.shares().get(2))
              .number("missing_share", z -> z.shares().get(3)),
          overview -> overview.zones().stream());

  private record Ranked(UnitsToMeasure.Choice choice, int rank) {}

  private static Stream<Ranked> ranked(List<UnitsToMeasure.Choice> choices) {
    return IntStream.range(0, choices.size())
        .mapToObj(
            c -> {
              UnitsToMeasure.Choice choice = choices.get(c);
              long before =
                  choices.subList(0, c).stream()
                      .filter(o -> o.kind().equals(choice.kind()))
                      .count();
              return new Ranked(choice, (int) before + 1);
            });
  }

  public static final Result<CatalogueOverview> UNITS_TO_MEASURE =
      Result.of(
          "units-to-measure.csv",
          Columns.<Ranked>start()
              .text("kind", r -> r.choice.kind())
              .text("unit", r -> r.choice.unit())
              .count("rank", Ranked::rank)
              .number("prediction_rms_before_db", r -> r.choice.beforeDb())
              .number("prediction_rms_after_db", r -> r.choice.afterDb()),
          overview -> ranked(overview.choices()));

  private record Held(String kind, Continuity.At at) {}

  /** The old fixture then and now. */
  public static final Result<CatalogueRun.Outcome> CONTINUITY =
      Result.of(
          "continuity.csv",
          Columns.<Held>start()
              .text("kind", Held::kind)
              .hz("band_hz", h -> h.at.band().midHz())
              .count("units", h -> h.at.units())
              .number("bias_db", h -> h.at.biasDb())
              .number("ci_low_db", h -> less(h.at, -1))
              .number("ci_high_db", h -> less(h.at, 1))
              .number("spread_db", h -> h.at.spreadDb())
              .number("added_db", h -> Math.sqrt(h.at.addedDb2())),
          outcome ->
              outcome.continuity().stream()
                  .flatMap(c -> Stream.concat(c.kinds().stream(), c.all().stream()))
                  .flatMap(
                      k ->
                          k.bands().stream()
                              .flatMap(Optional::stream)
                              .map(at -> new Held(k.kind(), at))));

  private static OptionalDouble less(Continuity.At at, int sign) {
    return at.halfDb().isPresent()
        ? OptionalDouble.of(at.biasDb() + sign * at.halfDb().getAsDouble())
        : at.halfDb();
  }

  public static final Result<CatalogueRun.Outcome> DOUBTS = DoubtResults.CATALOGUE;

  /** A reference curve as the mean transfer moves it. */
  public static final Result<TranslatedReference> REFERENCE =
      Result.of(
          "reference.csv",
          Columns.<TranslatedBand>start()
              .hz("band_hz", r -> r.band().midHz())
              .number("from_db", r -> r.fromDb())
              .part(
                  r -> r.predicted(),
                  mean ->
                      mean.number("to_db", m -> m.toDb())
                          .interval("ci_%s_db", m -> m.toDb(), m -> m.own().halfDb())
                          .interval("sim_%s_db", m -> m.toDb(), m -> m.whole().halfDb()))
              .word("mark", r -> r.mark().word())
              .word("reasons", r -> Reason.join(r.reasons())),
          reference -> reference.rows().stream());

  /** All of them, in the order of the manual. */
  static final List<Result<?>> ALL =
      List.of(
          GRAPH,
          POINTS,
          SUMMARY,
          HANDLING,
          OVERVIEW,
          OVERVIEW_ZONES,
          UNITS_TO_MEASURE,
          CONTINUITY,
          DOUBTS,
          REFERENCE);
}
