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
   * of the interval that holds over all bands at once, how well one unit is predicted, and where
   * the variance comes from.
   */
  record Fitted(
      Band band,
      RandomEffects.Result mean,
      double simultaneousHalfDb,
      Prediction prediction,
      Scatter scatter)
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
    /** The same, plus what the unit's neighbouring bands say. */
    WINDOW;

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
   * @param looRmsOffsetDb root mean square of the offset's leave-one-unit-out errors, dB
   * @param looRmsDb the same for the model, its choice included, dB
   */
  record Prediction(
      Optional<WindowRule> window, double halfDb, double looRmsOffsetDb, double looRmsDb) {
    public Prediction {
      Objects.requireNonNull(window, "window");
      Checks.notNegative(halfDb, "the prediction half-width in dB");
      Checks.notNegative(looRmsOffsetDb, "loo_rms_offset_db");
      Checks.notNegative(looRmsDb, "loo_rms_db");
    }

    /** The model: window or offset. */
    public Model model() {
      return window.isPresent() ? Model.WINDOW : Model.OFFSET;
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
