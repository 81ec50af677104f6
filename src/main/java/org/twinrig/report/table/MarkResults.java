package org.twinrig.report.table;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.reliability.FixtureFeature;
import org.twinrig.reliability.MarkStability;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.ResonanceWander;
import org.twinrig.reliability.Zone;
import org.twinrig.reliability.ZoneEdge;

/** Zones and how firmly they stand, and the resonances and features that make them. */
final class MarkResults {
  private MarkResults() {}

  static final Result<StudyOutcome> ZONES =
      Result.of(
          "zones.csv",
          "zone of a kind, a run of bands with one mark",
          Columns.<InKind<Zone>>start()
              .text("kind", r -> r.kind().kind())
              .hz("from_hz", r -> r.it().fromHz())
              .hz("to_hz", r -> r.it().toHz())
              .number("octaves", "its width", r -> r.it().octaves())
              .word("mark", r -> r.it().mark().word())
              .word(
                  "reasons",
                  "of all its bands; *no data* where nothing was measured",
                  r -> Reason.join(r.it().reasons())),
          study -> InKind.of(study, kind -> kind.zones().stream()),
          ". A run narrower than 1/6 octave may have joined a worse neighbour: the marks of"
              + " single bands are in *transfer.csv*");

  /** A band and how often it keeps its mark; a band without data has none to keep. */
  private record Stable(MarkedBand band, Optional<MarkStability.Shares> shares) {}

  static final Result<StudyOutcome> STABILITY =
      Result.of(
          "mark-stability.csv",
          "kind and band",
          Columns.<InKind<Stable>>start()
              .text("kind", r -> r.kind().kind())
              .hz("band_hz", r -> r.it().band.band().midHz())
              .word("mark", r -> r.it().band.mark().word())
              .part(
                  r -> r.it().shares,
                  shares ->
                      shares
                          .number(
                              "kept",
                              "how often the band keeps this mark when the study is redrawn"
                                  + " from its own units, 999 times: a share",
                              MarkStability.Shares::kept)
                          .number("reliable_share", MarkStability.Shares::reliable)
                          .number("caution_share", MarkStability.Shares::caution)
                          .number(
                              "unreliable_share",
                              "how often it had each mark",
                              MarkStability.Shares::unreliable)),
          study ->
              InKind.of(
                  study,
                  kind ->
                      IntStream.range(0, kind.transfer().bands().size())
                          .mapToObj(
                              b ->
                                  new Stable(
                                      kind.transfer().bands().get(b),
                                      kind.stability().bands().get(b)))),
          ". Empty without data");

  static final Result<StudyOutcome> EDGES =
      Result.of(
          "zone-edges.csv",
          "edge between two zones of a kind",
          Columns.<InKind<ZoneEdge>>start()
              .text("kind", r -> r.kind().kind())
              .hz("edge_hz", r -> r.it().edgeHz())
              .word("below_mark", r -> r.it().below().word())
              .word("above_mark", "marks of the zones below and above", r -> r.it().above().word())
              .hz("low_hz", r -> r.it().interval().map(i -> i.fromHz()))
              .hz(
                  "high_hz",
                  "where the edge may lie; empty where fewer than half of the redrawn studies have"
                      + " it",
                  r -> r.it().interval().map(i -> i.toHz()))
              .number("kept", "share of those that have it", r -> r.it().kept()),
          study -> InKind.of(study, kind -> kind.stability().edges().stream()));

  /** Where one unit shows a resonance. */
  private record Shown(ResonanceWander wander, ResonanceWander.Position at) {}

  static final Result<StudyOutcome> RESONANCES =
      Result.of(
          "resonances.csv",
          "kind, shape and unit that shows it on both fixtures",
          Columns.<InKind<Shown>>start()
              .text("kind", r -> r.kind().kind())
              .word(
                  "shape",
                  "*notch* or *peak*: the strongest in *resonance_search_hz*",
                  r -> word(r.it().wander))
              .text("unit", r -> r.it().at.unit())
              .hz("from_centre_hz", r -> r.it().at.from().hz())
              .hz(
                  "to_centre_hz",
                  "where it lies on the old and on the new fixture",
                  r -> r.it().at.to().hz())
              .number(
                  "shift_octaves", "below 0: lower on the new one", r -> r.it().at.shiftOctaves())
              .number("from_prominence_db", r -> r.it().at.from().prominenceDb())
              .number(
                  "to_prominence_db",
                  "how far it stands out, never below 0",
                  r -> r.it().at.to().prominenceDb())
              .number("from_width_octaves", r -> r.it().at.from().widthOctaves())
              .number(
                  "to_width_octaves", "at half its prominence", r -> r.it().at.to().widthOctaves()),
          study ->
              InKind.of(
                  study,
                  kind ->
                      kind.wanders().stream()
                          .flatMap(w -> w.positions().stream().map(p -> new Shown(w, p)))));

  private static String word(ResonanceWander wander) {
    return wander.shape().name().toLowerCase(Locale.ROOT);
  }

  static final Result<StudyOutcome> SHIFTS =
      Result.of(
          "resonance-shifts.csv",
          "kind and shape that three units or more show",
          Columns.<InKind<ResonanceWander>>start()
              .text("kind", r -> r.kind().kind())
              .word("shape", r -> word(r.it()))
              .count("units", "that show it on both fixtures", r -> r.it().positions().size())
              .count("units_of_kind", r -> r.kind().paired().units().size())
              .number("mean_shift_octaves", r -> r.it().meanShiftOctaves())
              .number("mean_low_octaves", r -> r.it().meanShiftOctaves() - r.it().meanHalfOctaves())
              .number(
                  "mean_high_octaves", r -> r.it().meanShiftOctaves() + r.it().meanHalfOctaves())
              .number(
                  "sd_octaves",
                  "standard deviation of the shift over units",
                  r -> r.it().sdOctaves())
              .number("sd_low_octaves", r -> r.it().sdLowOctaves())
              .number("sd_high_octaves", r -> r.it().sdHighOctaves())
              .hz("wander_from_hz", r -> r.it().zone().map(z -> z.fromHz()))
              .hz(
                  "wander_to_hz",
                  "the zone in which it wanders; empty where *sd_octaves* is at most 1/12",
                  r -> r.it().zone().map(z -> z.toHz())),
          study -> InKind.of(study, kind -> kind.wanders().stream()));

  static final Result<StudyOutcome> FEATURES =
      Result.of(
          "features.csv",
          "peak or notch that the units of a kind share",
          Columns.<InKind<FixtureFeature>>start()
              .text("kind", r -> r.kind().kind())
              .word(
                  "curve",
                  "*transfer*, the mean of new minus old; *from* or *to*, the mean curve of one"
                      + " fixture",
                  r -> r.it().curve().word())
              .word(
                  "shape", "*peak* or *notch*", r -> r.it().shape().name().toLowerCase(Locale.ROOT))
              .hz("centre_hz", r -> r.it().centre().value())
              .hz("centre_low_hz", r -> r.it().centre().low())
              .hz("centre_high_hz", r -> r.it().centre().high())
              .number(
                  "height_db",
                  "of the curve over its own smooth of one octave; below 0 for a notch",
                  r -> r.it().height().value())
              .number("low_db", r -> r.it().height().low())
              .number(
                  "high_db",
                  "interval of the height at this band alone",
                  r -> r.it().height().high())
              .number("sim_low_db", r -> r.it().height().value() - r.it().simultaneousHalfDb())
              .number("sim_high_db", r -> r.it().height().value() + r.it().simultaneousHalfDb())
              .part(
                  r -> r.it().width(),
                  width ->
                      width
                          .number("width_octaves", w -> w.value())
                          .number("width_low_octaves", w -> w.low())
                          .number(
                              "width_high_octaves",
                              "at half its height; empty where the curve does not fall so far",
                              w -> w.high()))
              .count("units", "with the curve there", r -> r.it().units())
              .count("units_sharing", "with a value of the same sign there", r -> r.it().sharing())
              .number("share", "the one over the other: 0.8 or more", r -> r.it().share()),
          study -> InKind.of(study, kind -> kind.evidence().features().all().stream()));
}
