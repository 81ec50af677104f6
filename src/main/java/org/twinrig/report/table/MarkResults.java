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
          Columns.<Zone>start()
              .hz("from_hz", r -> r.fromHz())
              .hz("to_hz", r -> r.toHz())
              .number("octaves", r -> r.octaves())
              .word("mark", r -> r.mark().word())
              .word("reasons", r -> Reason.join(r.reasons())),
          kind -> kind.zones().stream());

  /** A band and how often it keeps its mark; a band without data has none to keep. */
  private record Stable(MarkedBand band, Optional<MarkStability.Shares> shares) {}

  static final Result<StudyOutcome> STABILITY =
      Result.inKinds(
          "mark-stability.csv",
          Columns.<Stable>start()
              .hz("band_hz", r -> r.band.band().midHz())
              .word("mark", r -> r.band.mark().word())
              .part(
                  r -> r.shares,
                  shares ->
                      shares
                          .number("kept", MarkStability.Shares::kept)
                          .number("reliable_share", MarkStability.Shares::reliable)
                          .number("caution_share", MarkStability.Shares::caution)
                          .number("unreliable_share", MarkStability.Shares::unreliable)),
          kind ->
              IntStream.range(0, kind.transfer().bands().size())
                  .mapToObj(
                      b ->
                          new Stable(
                              kind.transfer().bands().get(b), kind.stability().bands().get(b))));

  static final Result<StudyOutcome> EDGES =
      Result.inKinds(
          "zone-edges.csv",
          Columns.<ZoneEdge>start()
              .hz("edge_hz", r -> r.edgeHz())
              .word("below_mark", r -> r.below().word())
              .word("above_mark", r -> r.above().word())
              .number("kept", r -> r.kept()),
          kind -> kind.stability().edges().stream());

  private record Shown(ResonanceWander wander, ResonanceWander.Position at) {}

  static final Result<StudyOutcome> RESONANCES =
      Result.inKinds(
          "resonances.csv",
          Columns.<Shown>start()
              .word("shape", r -> word(r.wander))
              .text("unit", r -> r.at.unit())
              .hz("from_centre_hz", r -> r.at.from().hz())
              .hz("to_centre_hz", r -> r.at.to().hz())
              .number("shift_octaves", r -> r.at.shiftOctaves())
              .number("from_prominence_db", r -> r.at.from().prominenceDb())
              .number("to_prominence_db", r -> r.at.to().prominenceDb())
              .number("from_width_octaves", r -> r.at.from().widthOctaves())
              .number("to_width_octaves", r -> r.at.to().widthOctaves()),
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
          Columns.<Shift>start()
              .word("shape", r -> word(r.wander))
              .count("units", r -> r.wander.positions().size())
              .count("units_of_kind", r -> r.unitsOfKind)
              .number("mean_shift_octaves", r -> r.wander.meanShiftOctaves())
              .interval(
                  "mean_%s_octaves",
                  r -> r.wander.meanShiftOctaves(), r -> r.wander.meanHalfOctaves())
              .number("sd_octaves", r -> r.wander.sdOctaves())
              .number("sd_low_octaves", r -> r.wander.sdLowOctaves())
              .number("sd_high_octaves", r -> r.wander.sdHighOctaves())
              .hz("wander_from_hz", r -> r.wander.zone().map(z -> z.fromHz()))
              .hz("wander_to_hz", r -> r.wander.zone().map(z -> z.toHz())),
          kind -> kind.wanders().stream().map(w -> new Shift(w, kind.paired().units().size())));

  static final Result<StudyOutcome> FEATURES =
      Result.inKinds(
          "features.csv",
          Columns.<FixtureFeature>start()
              .word("curve", r -> r.curve().word())
              .word("shape", r -> r.shape().name().toLowerCase(Locale.ROOT))
              .hz("centre_hz", r -> r.centre().value())
              .hz("centre_low_hz", r -> r.centre().low())
              .hz("centre_high_hz", r -> r.centre().high())
              .number("height_db", r -> r.height().value())
              .number("low_db", r -> r.height().low())
              .number("high_db", r -> r.height().high())
              .interval("sim_%s_db", r -> r.height().value(), r -> r.simultaneousHalfDb())
              .part(
                  r -> r.width(),
                  width ->
                      width
                          .number("width_octaves", w -> w.value())
                          .number("width_low_octaves", w -> w.low())
                          .number("width_high_octaves", w -> w.high()))
              .count("units", r -> r.units())
              .count("units_sharing", r -> r.sharing())
              .number("share", r -> r.share()),
          kind -> kind.evidence().features().all().stream());
}
