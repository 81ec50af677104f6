package org.twinrig.translation;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
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
    reasons = List.copyOf(reasons);
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

  /** The same band after the one below it, from which the correction may change by so much, dB. */
  TranslatedBand after(TranslatedBand below, double mostDb) {
    if (predicted.isEmpty() || below.predicted.isEmpty()) {
      return this;
    }
    Predicted own = predicted.get();
    double correction = own.toDb - fromDb.orElseThrow();
    double lower = below.predicted.get().toDb - below.fromDb.orElseThrow();
    double step = Math.max(0, Math.abs(correction - lower) - mostDb);
    return new TranslatedBand(
        band,
        fromDb,
        Optional.of(new Predicted(own.toDb, step, own.own, own.whole)),
        mark,
        reasons);
  }

  /** The same band of a graph that had another level, and the greater step of both links. */
  TranslatedBand onwardFrom(TranslatedBand before) {
    Predicted own = predicted.orElseThrow();
    double step = Math.max(own.stepDb, before.predicted.orElseThrow().stepDb);
    return new TranslatedBand(
        band,
        before.fromDb,
        Optional.of(new Predicted(own.toDb, step, own.own, own.whole)),
        mark,
        reasons);
  }

  /** The same band of a graph that had another level. */
  TranslatedBand withFrom(OptionalDouble levelDb) {
    return new TranslatedBand(band, levelDb, predicted, mark, reasons);
  }

  /** The same band with a mark no better than another, and why. */
  TranslatedBand lowered(Mark best, Reason reason) {
    List<Reason> all =
        Stream.concat(reasons.stream(), Stream.of(reason)).distinct().sorted().toList();
    return new TranslatedBand(band, fromDb, predicted, mark.worse(best), all);
  }

  /** The same band with a reference subtracted; unusable where the reference has no level. */
  TranslatedBand lessReference(OptionalDouble referenceDb) {
    if (predicted.isEmpty()) {
      return this;
    }
    if (referenceDb.isEmpty()) {
      return new TranslatedBand(
          band, fromDb, Optional.empty(), Mark.UNRELIABLE, List.of(Reason.NO_DATA));
    }
    Predicted raw = predicted.get();
    return new TranslatedBand(
        band,
        fromDb,
        Optional.of(
            new Predicted(
                raw.toDb() - referenceDb.getAsDouble(), raw.stepDb(), raw.own(), raw.whole())),
        mark,
        reasons);
  }

  /** Whether there is no level to mark: true when the old graph does not cover the band. */
  public boolean missing() {
    return fromDb.isEmpty();
  }
}
