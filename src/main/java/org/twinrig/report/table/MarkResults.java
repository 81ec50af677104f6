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
      Result.inKinds(
              "zones.csv",
              "zone of a kind, a run of bands with one mark",
              Columns.<Zone>start()
                  .hz("from_hz", r -> r.fromHz())
                  .hz("to_hz", r -> r.toHz())
                  .number("octaves", r -> r.octaves())
                  .help("its width")
                  .word("mark", r -> r.mark().word())
                  .word("reasons", r -> Reason.join(r.reasons()))
                  .help("of all its bands; *no data* where nothing was measured"),
              kind -> kind.zones().stream())
          .remark(
              ". A run narrower than 1/6 octave may have joined a worse neighbour: the marks of"
                  + " single bands are in *transfer.csv*");

  /** A band and how often it keeps its mark; a band without data has none to keep. */
  private record Stable(MarkedBand band, Optional<MarkStability.Shares> shares) {}

  static final Result<StudyOutcome> STABILITY =
      Result.inKinds(
              "mark-stability.csv",
              "kind and band",
              Columns.<Stable>start()
                  .hz("band_hz", r -> r.band.band().midHz())
                  .word("mark", r -> r.band.mark().word())
                  .part(
                      r -> r.shares,
                      shares ->
                          shares
                              .number("kept", MarkStability.Shares::kept)
                              .help(
                                  "how often the band keeps this mark when the study is redrawn"
                                      + " from its own units, 999 times: a share")
                              .number("reliable_share", MarkStability.Shares::reliable)
                              .number("caution_share", MarkStability.Shares::caution)
                              .number("unreliable_share", MarkStability.Shares::unreliable)
                              .help("how often it had each mark")),
              kind ->
                  IntStream.range(0, kind.transfer().bands().size())
                      .mapToObj(
                          b ->
                              new Stable(
                                  kind.transfer().bands().get(b), kind.stability().bands().get(b))))
          .remark(". Empty without data");

  static final Result<StudyOutcome> EDGES =
      Result.inKinds(
          "zone-edges.csv",
          "edge between two zones of a kind",
          Columns.<ZoneEdge>start()
              .hz("edge_hz", r -> r.edgeHz())
              .word("below_mark", r -> r.below().word())
              .word("above_mark", r -> r.above().word())
              .help("marks of the zones below and above")
              .number("kept", r -> r.kept())
              .help("share of the studies redrawn from the same units that have it"),
          kind -> kind.stability().edges().stream());

  private record Shown(ResonanceWander wander, ResonanceWander.Position at) {}

  static final Result<StudyOutcome> RESONANCES =
      Result.inKinds(
          "resonances.csv",
          "kind, shape and unit that shows it on both fixtures",
          Columns.<Shown>start()
              .word("shape", r -> word(r.wander))
              .help("*notch* or *peak*: the strongest in *resonance_search_hz*")
              .text("unit", r -> r.at.unit())
              .hz("from_centre_hz", r -> r.at.from().hz())
              .hz("to_centre_hz", r -> r.at.to().hz())
              .help("where it lies on the old and on the new fixture")
              .number("shift_octaves", r -> r.at.shiftOctaves())
              .help("below 0: lower on the new one")
              .number("from_prominence_db", r -> r.at.from().prominenceDb())
              .number("to_prominence_db", r -> r.at.to().prominenceDb())
              .help("how far it stands out, never below 0")
              .number("from_width_octaves", r -> r.at.from().widthOctaves())
              .number("to_width_octaves", r -> r.at.to().widthOctaves())
              .help("at half its prominence"),
          kind ->
              kind.wanders().stream()
                  .flatMap(w -> w.positions().stream().map(p -> new Shown(w, p))));

  private static String word(ResonanceWander wander) {
    return wander.shape().name().toLowerCase(Locale.ROOT);
  }

  private record Shift(ResonanceWander wander, int unitsOfKind) {}

  static final Result<StudyOutcome> SHIFTS =
      Result.inKinds(
          "resonance-shifts.csv",
          "kind and shape that three units or more show",
          Columns.<Shift>start()
              .word("shape", r -> word(r.wander))
              .count("units", r -> r.wander.positions().size())
              .help("that show it on both fixtures")
              .count("units_of_kind", r -> r.unitsOfKind)
              .number("mean_shift_octaves", r -> r.wander.meanShiftOctaves())
              .interval(
                  "mean_%s_octaves",
                  r -> r.wander.meanShiftOctaves(), r -> r.wander.meanHalfOctaves())
              .number("sd_octaves", r -> r.wander.sdOctaves())
              .help("standard deviation of the shift over units")
              .number("sd_low_octaves", r -> r.wander.sdLowOctaves())
              .number("sd_high_octaves", r -> r.wander.sdHighOctaves())
              .hz("wander_from_hz", r -> r.wander.zone().map(z -> z.fromHz()))
              .hz("wander_to_hz", r -> r.wander.zone().map(z -> z.toHz()))
              .help("the zone in which it wanders; empty where *sd_octaves* is at most 1/12"),
          kind -> kind.wanders().stream().map(w -> new Shift(w, kind.paired().units().size())));

  static final Result<StudyOutcome> FEATURES =
      Result.inKinds(
          "features.csv",
          "peak or notch that the units of a kind share",
          Columns.<FixtureFeature>start()
              .word("curve", r -> r.curve().word())
              .help(
                  "*transfer*, the mean of new minus old; *from* or *to*, the mean curve of one"
                      + " fixture")
              .word("shape", r -> r.shape().name().toLowerCase(Locale.ROOT))
              .help("*peak* or *notch*")
              .hz("centre_hz", r -> r.centre().value())
              .hz("centre_low_hz", r -> r.centre().low())
              .hz("centre_high_hz", r -> r.centre().high())
              .number("height_db", r -> r.height().value())
              .help("of the curve over its own smooth of one octave; below 0 for a notch")
              .number("low_db", r -> r.height().low())
              .number("high_db", r -> r.height().high())
              .help("interval of the height at this band alone")
              .interval("sim_%s_db", r -> r.height().value(), r -> r.simultaneousHalfDb())
              .part(
                  r -> r.width(),
                  width ->
                      width
                          .number("width_octaves", w -> w.value())
                          .number("width_low_octaves", w -> w.low())
                          .number("width_high_octaves", w -> w.high())
                          .help("at half its height; empty where the curve does not fall so far"))
              .count("units", r -> r.units())
              .help("with the curve there")
              .count("units_sharing", r -> r.sharing())
              .help("with a value of the same sign there")
              .number("share", r -> r.share())
              .help("the one over the other: 0.8 or more"),
          kind -> kind.evidence().features().all().stream());
}
