package org.twinrig.regression;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.band.Band;
import org.twinrig.internal.Checks;

/** What a kind's units gave at one band: an estimate, or the reason why there is none. */
public sealed interface BandOutcome {

  /** The band. */
  Band band();

  /** How many units had a level on both fixtures: 0 or more. */
  int units();

  /**
   * The band has an estimate: the mean transfer with its pointwise interval, the half-width in dB
   * of the interval that holds over all bands at once, how well one unit is predicted, where the
   * variance comes from, and what the units' own graphs are like.
   */
  record Fitted(
      Band band,
      RandomEffects.Result mean,
      double simultaneousHalfDb,
      Prediction prediction,
      Scatter scatter,
      UnitSpread unitSpread)
      implements BandOutcome {
    public Fitted {
      Checks.notNegative(simultaneousHalfDb, "the simultaneous half-width in dB");
    }

    @Override
    public int units() {
      return mean.units();
    }
  }

  /** The band has no estimate: how many units had a level on both fixtures, and why. */
  record NotFitted(Band band, int units, Why why) implements BandOutcome {}

  /** Why a band has no estimate. */
  enum Why {
    /** No unit has a level at the band on both fixtures. */
    NO_DATA,
    /** Fewer than three units have. */
    FEWER_THAN_THREE_UNITS
  }

  /** The rule that predicts one unit. */
  enum Model {
    /** The old level plus the mean transfer of the kind. */
    OFFSET,
    /** The same, plus what the unit's neighbouring bands say, as far as they have shown to. */
    AVERAGE;

    /** The model as files write it: for example {@code offset}. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * How well one unit of the kind is predicted from its graph on the old fixture.
   *
   * @param window what the unit's neighbouring bands say; nothing where the offset predicts alone
   * @param halfDb half-width of the prediction interval in dB: where a re-capture of the unit on
   *     the new fixture, averaged over as many seatings as in the study, will fall
   * @param offset the errors of the mean transfer alone
   * @param errors the errors of the model in force
   */
  record Prediction(Optional<WindowRule> window, double halfDb, Errors offset, Errors errors) {
    public Prediction {
      Objects.requireNonNull(window, "window");
      Checks.notNegative(halfDb, "the prediction half-width in dB");
    }

    /** The model: average or offset. */
    public Model model() {
      return window.isPresent() ? Model.AVERAGE : Model.OFFSET;
    }

    /** How much of the prediction is the mean transfer's alone, 0 to 1. */
    public double offsetWeight() {
      return window.map(WindowRule::offsetWeight).orElse(1.0);
    }
  }

  /**
   * How far predictions of units left out in turn missed.
   *
   * @param looRmsDb root mean square error at the band, dB
   * @param varianceDb2 the variance that an interval at this band rests on, see {@link
   *     ErrorVariance}, dB²
   * @param degreesOfFreedom of that variance
   * @param wholeVarianceDb2 the variance that an interval over the whole curve rests on: mean
   *     square error over the bands within 1/3 octave, dB²
   */
  record Errors(
      double looRmsDb, double varianceDb2, double degreesOfFreedom, double wholeVarianceDb2) {
    public Errors {
      Checks.notNegative(looRmsDb, "a root mean square error in dB");
      Checks.notNegative(varianceDb2, "a variance of errors in dB²");
      Checks.positive(degreesOfFreedom, "degrees of freedom");
      Checks.notNegative(wholeVarianceDb2, "a variance of errors in dB²");
    }
  }

  /**
   * What the kind's own units are like, for a graph to be held against: their levels on the old
   * fixture, and how fast their differences change.
   *
   * @param meanDb {@code x̄}, dB
   * @param sdDb root of the variance between units, averaged over the bands within 1/6 octave, dB
   * @param stepDb greatest change of a unit's difference between the fixtures from the band below
   *     to this one, dB; 0 where no unit has both
   */
  record UnitSpread(double meanDb, double sdDb, double stepDb) {
    public UnitSpread {
      Checks.finite(meanDb, "a mean level in dB");
      Checks.notNegative(sdDb, "a standard deviation in dB");
      Checks.notNegative(stepDb, "a step in dB");
    }
  }

  /**
   * Where the variance of the units' differences comes from.
   *
   * @param seatingVariance mean of {@code v_i} over the units, dB²; 0 where seating scatter is
   *     unknown
   * @param seatVarianceFrom pooled variance between seatings on the old fixture {@code s2_A}, dB²;
   *     nothing when no unit was seated twice
   * @param seatVarianceTo the same on the new fixture {@code s2_B}, dB²
   * @param seatingsFrom harmonic mean number of seatings on the old fixture {@code ñ_A}
   */
  record Scatter(
      double seatingVariance,
      OptionalDouble seatVarianceFrom,
      OptionalDouble seatVarianceTo,
      double seatingsFrom) {
    public Scatter {
      Checks.notNegative(seatingVariance, "the seating variance in dB²");
      seatVarianceFrom.ifPresent(v -> Checks.notNegative(v, "seat_variance_from_db2"));
      seatVarianceTo.ifPresent(v -> Checks.notNegative(v, "seat_variance_to_db2"));
      Checks.positive(seatingsFrom, "the harmonic mean of seatings");
    }
  }
}
