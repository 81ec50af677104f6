package org.twinrig.translation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.band.Band;
import org.twinrig.internal.Checks;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Reason;

/**
 * One band of a re-expressed graph.
 *
 * @param fromDb level of the old graph in dB; nothing where it does not cover the band
 * @param predicted level on the new fixture with its prediction interval; nothing where the old
 *     graph or the study has no level
 */
public record TranslatedBand(
    Band band,
    OptionalDouble fromDb,
    Optional<Predicted> predicted,
    Mark mark,
    List<Reason> reasons) {

  public TranslatedBand {
    reasons = reasons.stream().distinct().sorted().toList();
  }

  /**
   * How far an interval reaches to either side of a level, dB, and the degrees of freedom of the
   * uncertainty it was made from; effective ones where several links were combined.
   */
  public record Reach(double halfDb, double degreesOfFreedom) {
    public Reach {
      Checks.notNegative(halfDb, "a prediction half-width in dB");
      Checks.positive(degreesOfFreedom, "degrees of freedom");
    }
  }

  /**
   * A predicted level.
   *
   * @param toDb level on the new fixture, dB
   * @param stepDb by how much the correction changes from the band below more than any unit's own
   *     difference between the fixtures does there, dB; 0 or more
   * @param own of the interval that holds a new measurement at this band
   * @param whole of the interval that holds it at all bands at once
   */
  public record Predicted(double toDb, double stepDb, Reach own, Reach whole) {
    public Predicted {
      Checks.finite(toDb, "a translated level in dB");
      Checks.notNegative(stepDb, "a step in dB");
    }

    /** The same with another level and step, dB. */
    Predicted with(double otherDb, double otherStepDb) {
      return new Predicted(otherDb, otherStepDb, own, whole);
    }

    /** Half-width of the interval at this band, dB. */
    public double halfDb() {
      return own.halfDb;
    }

    /** Lower end of the interval at this band, dB. */
    public double lowDb() {
      return toDb - own.halfDb;
    }

    /** Upper end of the interval at this band, dB. */
    public double highDb() {
      return toDb + own.halfDb;
    }
  }

  /** A band without a prediction, and why. */
  static TranslatedBand unusable(Band band, OptionalDouble fromDb, List<Reason> reasons) {
    return new TranslatedBand(band, fromDb, Optional.empty(), Mark.UNRELIABLE, reasons);
  }

  /** The same band with other levels. */
  TranslatedBand with(OptionalDouble from, Optional<Predicted> to) {
    return new TranslatedBand(band, from, to, mark, reasons);
  }

  /** How far the predicted level lies above the old graph's, dB; only where there is one. */
  double shiftDb() {
    return predicted.orElseThrow().toDb - fromDb.orElseThrow();
  }

  /** The same band after the one below it, from which the correction may change by so much, dB. */
  TranslatedBand after(TranslatedBand below, double mostDb) {
    if (predicted.isEmpty() || below.predicted.isEmpty()) {
      return this;
    }
    double step = Math.max(0, Math.abs(shiftDb() - below.shiftDb()) - mostDb);
    return with(fromDb, predicted.map(p -> p.with(p.toDb, step)));
  }

  /** The same band with a mark no better than any of these reasons allows. */
  TranslatedBand lowered(List<Reason> others) {
    List<Reason> all = new ArrayList<>(reasons);
    Mark lowest = mark;
    for (Reason reason : others) {
      if (reason.best().isPresent()) {
        lowest = lowest.worse(reason.best().get());
        all.add(reason);
      }
    }
    return new TranslatedBand(band, fromDb, predicted, lowest, all);
  }

  /** Whether there is no level to mark: true when the old graph does not cover the band. */
  public boolean missing() {
    return fromDb.isEmpty();
  }
}
