package org.twinrig.study;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Anchor;
import org.twinrig.response.Smoothing;
import org.twinrig.spectrum.SoundContent;

/**
 * How a study is to be computed and judged.
 *
 * @param anchor where the level of a capture is pinned
 * @param confidence of every interval, 0.5 to 0.9999
 * @param tolerance how far a translated level may be off
 * @param minUnits with fewer units than this a band is unreliable; 3 or more
 * @param zones what the lab already knows to be doubtful
 * @param resonanceSearch where resonances are looked for
 * @param screening what becomes of doubtful captures
 * @param model how a unit is predicted
 * @param seed starts every random draw
 * @param calibratorClass of the calibrators of both fixtures, if the lab gave it
 * @param sound what captures that are sound files hold, and the window they are seen through
 * @param sessions how sessions are judged and corrected
 * @param captureSmoothing what the captures were smoothed by before they came here
 * @param publishing when a re-expressed graph may be published
 */
public record Settings(
    BandGrid grid,
    Anchor anchor,
    double confidence,
    Tolerance tolerance,
    int minUnits,
    List<DeclaredZone> zones,
    FrequencyRange resonanceSearch,
    ScreeningMode screening,
    PredictionModel model,
    long seed,
    Optional<CalibratorClass> calibratorClass,
    SoundContent sound,
    SessionRules sessions,
    Smoothing captureSmoothing,
    PublishingRule publishing) {

  /** The fewest units an estimate can be made from; {@code minUnits} cannot be lower. */
  public static final int FEWEST_UNITS = 3;

  public Settings {
    Objects.requireNonNull(grid, "grid");
    Objects.requireNonNull(anchor, "anchor");
    if (!NumberRange.CONFIDENCE.holds(confidence)) {
      throw new IllegalArgumentException("confidence must be 0.5 to 0.9999, but is " + confidence);
    }
    Objects.requireNonNull(tolerance, "tolerance");
    if (minUnits < FEWEST_UNITS) {
      throw new IllegalArgumentException("min_units must be 3 or more, but is " + minUnits);
    }
    zones = List.copyOf(zones);
    Objects.requireNonNull(resonanceSearch, "resonanceSearch");
    Objects.requireNonNull(screening, "screening");
    Objects.requireNonNull(model, "model");
    Objects.requireNonNull(calibratorClass, "calibratorClass");
    Objects.requireNonNull(sound, "sound");
    Objects.requireNonNull(sessions, "sessions");
    Objects.requireNonNull(captureSmoothing, "captureSmoothing");
    Objects.requireNonNull(publishing, "publishing");
  }

  /**
   * What holds where study.yaml says nothing: 12 bands per octave from 20 Hz to 20 kHz, anchored
   * from 300 Hz to 1 kHz, 95 % confidence, 1.5 dB and 3 dB, 0.5 dB for equivalence, at least 5
   * units, no zones, resonances from 5 kHz to 12 kHz, screening that suggests, seed 1, calibrators
   * of a class that is not known, sound files that hold impulse responses, no check unit, captures
   * that are not smoothed, graphs published by the standard rule.
   */
  public static Settings defaults() {
    return new Settings(
        BandGrid.covering(20, 20_000, 12),
        new Anchor.Range(300, 1000),
        0.95,
        new Tolerance(DbLimit.everywhere(1.5), DbLimit.everywhere(3.0), 0.5),
        5,
        List.of(),
        new FrequencyRange(5000, 12_000),
        ScreeningMode.SUGGEST,
        PredictionModel.AUTO,
        1,
        Optional.empty(),
        SoundContent.defaults(),
        SessionRules.none(),
        Smoothing.NONE,
        PublishingRule.standard());
  }

  /**
   * The same settings over other bands.
   *
   * @return the changed settings
   */
  public Settings withGrid(BandGrid other) {
    return changed(draft -> draft.grid = other);
  }

  /**
   * The same settings with another anchor.
   *
   * @return the changed settings
   */
  public Settings withAnchor(Anchor other) {
    return changed(draft -> draft.anchor = other);
  }

  /**
   * The same settings at another confidence.
   *
   * @param other strictly between 0 and 1
   * @return the changed settings
   */
  public Settings withConfidence(double other) {
    return changed(draft -> draft.confidence = other);
  }

  /**
   * The same settings with another tolerance.
   *
   * @param other how far a translated level may be off
   * @return the changed settings
   */
  public Settings withTolerance(Tolerance other) {
    return changed(draft -> draft.tolerance = other);
  }

  /**
   * The same settings with other declared zones.
   *
   * @return the changed settings
   */
  public Settings withZones(List<DeclaredZone> other) {
    return changed(draft -> draft.zones = other);
  }

  /**
   * The same settings with another way of screening.
   *
   * @param other what becomes of doubtful captures
   * @return the changed settings
   */
  public Settings withScreening(ScreeningMode other) {
    return changed(draft -> draft.screening = other);
  }

  /**
   * The same settings with another way of predicting a unit.
   *
   * @param other how a unit is predicted
   * @return the changed settings
   */
  public Settings withModel(PredictionModel other) {
    return changed(draft -> draft.model = other);
  }

  /**
   * The same settings with another seed.
   *
   * @param other starts every random draw
   * @return the changed settings
   */
  public Settings withSeed(long other) {
    return changed(draft -> draft.seed = other);
  }

  /**
   * The same settings with calibrators of a known class.
   *
   * @return the changed settings
   */
  public Settings withCalibratorClass(CalibratorClass other) {
    return changed(draft -> draft.calibratorClass = Optional.of(other));
  }

  /**
   * The same settings with other sound files.
   *
   * @param other what they hold
   * @return the changed settings
   */
  public Settings withSound(SoundContent other) {
    return changed(draft -> draft.sound = other);
  }

  /**
   * The same settings with other rules for sessions.
   *
   * @return the changed settings
   */
  public Settings withSessions(SessionRules other) {
    return changed(draft -> draft.sessions = other);
  }

  private Settings changed(Consumer<Draft> change) {
    Draft draft = new Draft(this);
    change.accept(draft);
    return draft.settings();
  }

  /** Settings on their way to others; it leaves no method. */
  private static final class Draft {
    private BandGrid grid;
    private Anchor anchor;
    private double confidence;
    private Tolerance tolerance;
    private int minUnits;
    private List<DeclaredZone> zones;
    private FrequencyRange resonanceSearch;
    private ScreeningMode screening;
    private PredictionModel model;
    private long seed;
    private Optional<CalibratorClass> calibratorClass;
    private SoundContent sound;
    private SessionRules sessions;
    private Smoothing captureSmoothing;
    private PublishingRule publishing;

    Draft(Settings settings) {
      grid = settings.grid;
      anchor = settings.anchor;
      confidence = settings.confidence;
      tolerance = settings.tolerance;
      minUnits = settings.minUnits;
      zones = settings.zones;
      resonanceSearch = settings.resonanceSearch;
      screening = settings.screening;
      model = settings.model;
      seed = settings.seed;
      calibratorClass = settings.calibratorClass;
      sound = settings.sound;
      sessions = settings.sessions;
      captureSmoothing = settings.captureSmoothing;
      publishing = settings.publishing;
    }

    Settings settings() {
      return new Settings(
          grid,
          anchor,
          confidence,
          tolerance,
          minUnits,
          zones,
          resonanceSearch,
          screening,
          model,
          seed,
          calibratorClass,
          sound,
          sessions,
          captureSmoothing,
          publishing);
    }
  }
}
