package org.twinrig.report.table;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.evidence.UnitsToMeasure;
import org.twinrig.reliability.Reason;
import org.twinrig.response.Smoothing;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Continuity;
import org.twinrig.translation.GraphPoints;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.TranslatedGraph;
import org.twinrig.translation.TranslatedReference;
import org.twinrig.translation.Treatment;

/** The tables of a re-expressed catalogue, and of a re-expressed reference. */
public final class CatalogueResults {
  private static final int SHA256_DIGITS = 64;

  private CatalogueResults() {}

  public static final Result<TranslatedGraph> GRAPH =
      Result.of(
          "translated/<graph>.csv",
          "band of the study; one file per graph",
          Columns.<TranslatedBand>start()
              .hz("band_hz", b -> b.band().midHz())
              .number("from_db", TranslatedBand::fromDb)
              .help("the old graph; empty where it does not cover the band")
              .part(
                  TranslatedBand::predicted,
                  predicted ->
                      predicted
                          .number("to_db", p -> p.toDb())
                          .help("as if measured on the new fixture")
                          .number("low_db", p -> p.lowDb())
                          .number("high_db", p -> p.highDb())
                          .help(
                              "where a new measurement at this band will fall; all five are empty"
                                  + " where nothing can be said")
                          .interval("whole_%s_db", p -> p.toDb(), p -> p.whole().halfDb())
                          .help("where it will fall at all bands at once"))
              .word("mark", b -> b.mark().word())
              .word("reasons", b -> Reason.join(b.reasons())),
          graph -> graph.bands().stream());

  public static final Result<GraphPoints> POINTS =
      Result.of(
          "points/<graph>.csv",
          "point of the old graph; one file per graph",
          Columns.<GraphPoints.Point>start()
              .hz("frequency_hz", p -> p.frequencyHz())
              .help("as the graph came")
              .part(
                  GraphPoints.Point::said,
                  said ->
                      said.number("level_db", s -> s.levelDb())
                          .help(
                              "the graph as it came plus the correction of the bands, smooth over"
                                  + " log frequency; its band levels are *to_db*; empty outside its"
                                  + " bands")
                          .interval("%s_db", s -> s.levelDb(), s -> s.halfDb())
                          .help("where a new measurement will fall")
                          .word("mark", s -> s.mark().word())
                          .help("of the band the point lies in")),
          points -> points.points().stream());

  public static final Result<CatalogueRun.Outcome> SUMMARY =
      Result.of(
          "summary.csv",
          "graph re-expressed",
          Columns.<CatalogueRun.Line>start()
              .text("graph", l -> l.entry().graph())
              .text("unit", l -> l.entry().unit())
              .text("kind", l -> l.entry().kind())
              .word("decision", l -> l.decision().word())
              .help("*publish*, *publish with marks* or *re-measure*")
              .number("reliable_octaves", l -> l.octaves().reliable())
              .number("caution_octaves", l -> l.octaves().caution())
              .number("unreliable_octaves", l -> l.octaves().unreliable())
              .help("of the bands that the graph covers")
              .number("missing_octaves", l -> l.octaves().missing())
              .help("bands it does not cover")
              .number("largest_step_db", l -> l.largestStepDb())
              .help(
                  "largest step between neighbouring bands that neither the old graph nor any unit"
                      + " of the study has; 0 where there is none")
              .word("reasons", l -> Reason.join(l.reasons()))
              .help("of all bands it covers"),
          outcome -> outcome.lines().stream());

  public static final Result<CatalogueRun.Outcome> HANDLING =
      Result.of(
          "handling.csv",
          "graph re-expressed",
          Columns.<CatalogueRun.Line>start()
              .text("graph", l -> l.entry().graph())
              .text("file", l -> l.entry().file())
              .word("sha256", l -> l.sha256().substring(0, SHA256_DIGITS))
              .help("of the file")
              .count("seatings_taken", l -> l.entry().averaged().seatings().orElse(1))
              .help("1 where the catalogue says nothing")
              .count("sides", l -> l.entry().averaged().sides())
              .help("empty: taken to be as in the study")
              .word("form_from", l -> form(l.treatment().before()))
              .word("form_to", l -> form(l.treatment().now()))
              .help("*raw* or *compensated*, as it came and as it is given")
              .word("smoothing", l -> l.entry().smoothing().map(Smoothing::word))
              .help("as stated; empty where nothing is, and taken as none")
              .word("smoothing_match", l -> l.treatment().smoothing().word())
              .help("how graph and captures were made alike, see below")
              .text("old_reference", l -> l.treatment().before().map(Treatment.Reference::file))
              .word("old_reference_smoothing", l -> smoothing(l.treatment().before()))
              .help(
                  "the curve that was added back, and its smoothing if stated; empty for a raw"
                      + " graph")
              .text("new_reference", l -> l.treatment().now().map(Treatment.Reference::file))
              .word("new_reference_smoothing", l -> smoothing(l.treatment().now()))
              .help("the curve subtracted again; empty where the graph is given raw")
              .number("change_rms_db", l -> l.change().totalRmsDb())
              .number("fixture_change_rms_db", l -> l.change().fixtureRmsDb())
              .number("reference_change_rms_db", l -> l.change().referenceRmsDb())
              .help(
                  "how far the graph moved over the range of *publishing*, root mean square: in"
                      + " all; by the change of fixture; by the change of reference, empty where"
                      + " the graph came raw or is given raw"),
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
          "kind and decision that occurs",
          Columns.<CatalogueOverview.Decided>start()
              .text("kind", d -> d.kind())
              .word("decision", d -> d.decision().word())
              .count("graphs", d -> d.graphs())
              .number("mean_reliable_octaves", d -> d.octaves().get(0))
              .number("mean_caution_octaves", d -> d.octaves().get(1))
              .number("mean_unreliable_octaves", d -> d.octaves().get(2))
              .number("mean_missing_octaves", d -> d.octaves().get(3))
              .help("means over these graphs"),
          overview -> overview.decisions().stream());

  public static final Result<CatalogueOverview> OVERVIEW_ZONES =
      Result.of(
          "overview-zones.csv",
          "zone of the study, of kinds with graphs",
          Columns.<CatalogueOverview.ZoneShare>start()
              .text("kind", z -> z.kind())
              .hz("from_hz", z -> z.zone().fromHz())
              .hz("to_hz", z -> z.zone().toHz())
              .word("mark_in_study", z -> z.zone().mark().word())
              .word("reasons_in_study", z -> Reason.join(z.zone().reasons()))
              .count("graphs", z -> z.graphs())
              .help("of the kind")
              .number("reliable_share", z -> z.shares().get(0))
              .number("caution_share", z -> z.shares().get(1))
              .number("unreliable_share", z -> z.shares().get(2))
              .number("missing_share", z -> z.shares().get(3))
              .help("of the zone's bands over all these graphs; the four add up to 1"),
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
          "unit worth measuring on both fixtures, at most ten of a kind",
          Columns.<Ranked>start()
              .text("kind", r -> r.choice.kind())
              .text("unit", r -> r.choice.unit())
              .count("rank", Ranked::rank)
              .help("within the kind, 1 helps most; each is chosen given those before it")
              .number("prediction_rms_before_db", r -> r.choice.beforeDb())
              .number("prediction_rms_after_db", r -> r.choice.afterDb())
              .help(
                  "root of the mean prediction variance of the kind's graphs over the range of"
                      + " *publishing*, without and with this unit, those before it being measured"),
          overview -> ranked(overview.choices()));

  private record Held(String kind, Continuity.At at) {}

  /** The old fixture then and now. */
  public static final Result<CatalogueRun.Outcome> CONTINUITY =
      Result.<CatalogueRun.Outcome, Held>of(
              "continuity.csv",
              "kind and band, of graphs whose units the study captured on the old fixture",
              Columns.<Held>start()
                  .text("kind", Held::kind)
                  .hz("band_hz", h -> h.at.band().midHz())
                  .count("units", h -> h.at.units())
                  .number("bias_db", h -> h.at.biasDb())
                  .help("old graph minus today's captures, both lined up, mean over units")
                  .number("ci_low_db", h -> less(h.at, -1))
                  .number("ci_high_db", h -> less(h.at, 1))
                  .help("its interval at this band alone; empty with one unit")
                  .number("spread_db", h -> h.at.spreadDb())
                  .help("standard deviation between units; empty with one unit")
                  .number("added_db", h -> Math.sqrt(h.at.addedDb2()))
                  .help(
                      "what old graphs scatter beyond their seatings, which every interval of the"
                          + " catalogue holds where three units or more are known"),
              outcome ->
                  outcome.continuity().stream()
                      .flatMap(c -> Stream.concat(c.kinds().stream(), c.all().stream()))
                      .flatMap(
                          k ->
                              k.bands().stream()
                                  .flatMap(Optional::stream)
                                  .map(at -> new Held(k.kind(), at))))
          .remark(
              ". Without rows where the catalogue has no such graph, or the study's captures are not"
                  + " at hand");

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
          "band, of the curve given to `--reference`",
          Columns.<TranslatedBand>start()
              .hz("band_hz", r -> r.band().midHz())
              .number("from_db", r -> r.fromDb())
              .part(
                  r -> r.predicted(),
                  mean ->
                      mean.number("to_db", m -> m.toDb())
                          .help("with the mean transfer of the kind added")
                          .interval("ci_%s_db", m -> m.toDb(), m -> m.own().halfDb())
                          .help("interval of the mean transfer at this band alone, about *to_db*")
                          .interval("sim_%s_db", m -> m.toDb(), m -> m.whole().halfDb()))
              .word("mark", r -> r.mark().word())
              .help("by that interval, not by that of a unit")
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
