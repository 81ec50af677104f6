package org.twinrig.report.table;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.reliability.FixtureFeature;
import org.twinrig.reliability.FixtureFeature.Estimate;
import org.twinrig.reliability.ResonanceWander;

/** The rows of resonances.csv, resonance-shifts.csv and features.csv. */
final class FeatureTables {
  private FeatureTables() {}

  /** One row per unit and shape that shows on both fixtures. */
  static ResultTable resonances(StudyOutcome outcome) {
    ResultTable table =
        new ResultTable(
            ("kind,shape,unit,from_centre_hz,to_centre_hz,shift_octaves,from_prominence_db,"
                    + "to_prominence_db,from_width_octaves,to_width_octaves")
                .split(","));
    for (KindOutcome kind : outcome.kinds()) {
      for (ResonanceWander w : kind.wanders()) {
        for (ResonanceWander.Position p : w.positions()) {
          table
              .text(kind.kind())
              .word(word(w))
              .text(p.unit())
              .hz(p.from().hz())
              .hz(p.to().hz())
              .number(p.shiftOctaves())
              .number(p.from().prominenceDb())
              .number(p.to().prominenceDb())
              .number(p.from().widthOctaves())
              .number(p.to().widthOctaves())
              .endRow();
        }
      }
    }
    return table;
  }

  static ResultTable shifts(StudyOutcome outcome) {
    ResultTable table =
        new ResultTable(
            ("kind,shape,units,units_of_kind,mean_shift_octaves,mean_low_octaves,mean_high_octaves,"
                    + "sd_octaves,sd_low_octaves,sd_high_octaves,wander_from_hz,wander_to_hz")
                .split(","));
    for (KindOutcome kind : outcome.kinds()) {
      for (ResonanceWander w : kind.wanders()) {
        table
            .text(kind.kind())
            .word(word(w))
            .count(w.positions().size())
            .count(kind.paired().units().size())
            .number(w.meanShiftOctaves())
            .number(w.meanShiftOctaves() - w.meanHalfOctaves())
            .number(w.meanShiftOctaves() + w.meanHalfOctaves())
            .number(w.sdOctaves())
            .number(w.sdLowOctaves())
            .number(w.sdHighOctaves());
        w.zone().ifPresentOrElse(z -> table.hz(z.fromHz()).hz(z.toHz()), () -> table.empty(2));
        table.endRow();
      }
    }
    return table;
  }

  private static String word(ResonanceWander w) {
    return w.shape().name().toLowerCase(Locale.ROOT);
  }

  static ResultTable features(StudyOutcome outcome) {
    ResultTable table =
        new ResultTable(
            ("kind,curve,shape,centre_hz,centre_low_hz,centre_high_hz,height_db,low_db,high_db,"
                    + "sim_low_db,sim_high_db,width_octaves,width_low_octaves,width_high_octaves,"
                    + "units,units_sharing,share")
                .split(","));
    for (KindOutcome kind : outcome.kinds()) {
      kind.evidence().features().all().forEach(f -> row(table, kind.kind(), f));
    }
    return table;
  }

  private static void row(ResultTable table, String kind, FixtureFeature f) {
    double height = f.height().value();
    table
        .text(kind)
        .word(f.curve().word())
        .word(f.shape().name().toLowerCase(Locale.ROOT))
        .hz(f.centre().value())
        .hz(f.centre().low())
        .hz(f.centre().high())
        .number(height)
        .number(f.height().low())
        .number(f.height().high())
        .number(height - f.simultaneousHalfDb())
        .number(height + f.simultaneousHalfDb())
        .number(end(f.width().map(Estimate::value)))
        .number(end(f.width().map(Estimate::low)))
        .number(end(f.width().map(Estimate::high)))
        .count(f.units())
        .count(f.sharing())
        .number(f.share())
        .endRow();
  }

  private static OptionalDouble end(Optional<Double> octaves) {
    return octaves.isPresent() ? OptionalDouble.of(octaves.get()) : OptionalDouble.empty();
  }
}
