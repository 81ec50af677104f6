package org.twinrig.report.html;

import java.util.List;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.Zone;
import org.twinrig.study.DeclaredZone;

/** Why a zone is not to be compared freely, for readers who do not measure. */
public final class PlainReason {
  private PlainReason() {}

  /** One reason as a clause. */
  public static String of(Reason reason) {
    return switch (reason) {
      case NO_DATA -> "nothing was measured here";
      case FEW_UNITS -> "too few headphones of this kind were measured on both fixtures";
      case WIDE_PREDICTION -> "the old graph does not tell closely enough what the new one shows";
      case SEATING_SCATTER -> "the level changes each time the headphone is put on";
      case UNITS_DISAGREE -> "the change is not the same for every headphone of the kind";
      case OUTSIDE_EAR_SIMULATOR_RANGE ->
          "the zone lies outside the range that an artificial ear is made for";
      case DECLARED_ZONE -> "the lab knows this zone to be doubtful";
      case RESONANCE_WANDERS -> "a peak or dip sits at another place on the new fixture";
      case KIND_NOT_IN_THE_STUDY -> "the lab measured no headphone of this kind on both fixtures";
      case OUTSIDE_THE_STUDY -> "the lab measured no headphone like this one on both fixtures";
      case COARSE_POINTS -> "the curves have few points here";
      case NO_SCATTER -> "all headphones look the same here, which real ones never do";
      case SMOOTHED_MORE -> "the old graph shows less detail than the measurements";
    };
  }

  /** All reasons of a zone. */
  static String of(Zone zone, List<DeclaredZone> declared) {
    List<String> clauses =
        zone.reasons().stream()
            .map(
                r ->
                    r == Reason.DECLARED_ZONE
                        ? of(r) + inBrackets(ZoneSheet.names(zone, declared))
                        : of(r))
            .toList();
    return clauses.isEmpty()
        ? "the old graph tells closely enough what the new one shows"
        : String.join("; ", clauses);
  }

  private static String inBrackets(String names) {
    return names.isEmpty() ? "" : " (" + names + ")";
  }
}
