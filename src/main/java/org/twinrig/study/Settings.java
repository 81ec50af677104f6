package org.twinrig.study;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.CalibratorClass;
import org.twinrig.internal.Checks;
import org.twinrig.response.Anchor;
import org.twinrig.response.Smoothing;
import org.twinrig.spectrum.SoundContent;

/**
 * How a study is to be computed and judged: a value for every {@link Setting}. Immutable; two are
 * equal when all values are.
 */
public final class Settings {

  /** The fewest units an estimate can be made from; {@code min_units} cannot be lower. */
  public static final int FEWEST_UNITS = 3;

  /** Under this name stands what holds for the kinds that no other name fits. */
  static final String OTHER_KINDS = "default";

  private final Map<Setting<?>, Object> values;
  private final BandGrid grid;

  private Settings(Map<Setting<?>, Object> values) {
    this.values = values;
    if (!NumberRange.CONFIDENCE.holds(confidence())) {
      throw new IllegalArgumentException(
          "confidence must be 0.5 to 0.9999, but is " + confidence());
    }
    if (minUnits() < FEWEST_UNITS) {
      throw new IllegalArgumentException("min_units must be 3 or more, but is " + minUnits());
    }
    Checks.notNegative(microphoneDriftDb(), "microphone_drift_db");
    if (drift() == DriftMode.CORRECT && checkUnit().isEmpty()) {
      throw new IllegalArgumentException("drift can be corrected only by a check unit");
    }
    grid = get(Setting.BANDS).grid();
  }

  /** What holds where study.yaml says nothing: the standard of every setting. */
  public static Settings defaults() {
    Map<Setting<?>, Object> values = new LinkedHashMap<>();
    Setting.ALL.forEach(setting -> values.put(setting, setting.standard()));
    return new Settings(values);
  }

  @SuppressWarnings("unchecked") // nothing but a T is ever put there, see with()
  public <T> T get(Setting<T> setting) {
    return (T) Objects.requireNonNull(values.get(setting), setting::key);
  }

  /** The same settings with another value of one of them, which must fit the others. */
  public <T> Settings with(Setting<T> setting, T value) {
    Map<Setting<?>, Object> changed = new LinkedHashMap<>(values);
    changed.put(setting, Objects.requireNonNull(value, setting::key));
    return new Settings(changed);
  }

  public BandGrid grid() {
    return grid;
  }

  public Anchor anchor() {
    return get(Setting.ANCHOR);
  }

  /** Of every interval, 0.5 to 0.9999. */
  public double confidence() {
    return get(Setting.CONFIDENCE);
  }

  public Tolerance tolerance() {
    return get(Setting.TOLERANCE);
  }

  /** With fewer units than this a band is unreliable; 3 or more. */
  public int minUnits() {
    return get(Setting.MIN_UNITS);
  }

  public List<DeclaredZone> zones() {
    return get(Setting.ZONES);
  }

  /**
   * Where the notch and the peak of each unit of a kind are looked for: the range under the longest
   * of the names that the kind's name contains, else the one for all other kinds.
   */
  public FrequencyRange resonanceSearch(String kind) {
    Map<String, FrequencyRange> ranges = get(Setting.RESONANCE_SEARCH_HZ);
    return ranges.keySet().stream()
        .filter(name -> fits(name, kind))
        .max(Comparator.comparingInt(String::length).thenComparing(Comparator.naturalOrder()))
        .map(ranges::get)
        .orElseGet(() -> ranges.get(OTHER_KINDS));
  }

  /** Whether a name under which a setting stands is part of a kind's name. */
  static boolean fits(String name, String kind) {
    return kind.toLowerCase(Locale.ROOT).contains(name.toLowerCase(Locale.ROOT));
  }

  public ScreeningMode screening() {
    return get(Setting.SCREENING);
  }

  public long seed() {
    return get(Setting.SEED);
  }

  public Optional<CalibratorClass> calibratorClass() {
    return get(Setting.CALIBRATOR_CLASS);
  }

  /** What captures that are sound files hold, and the window they are seen through. */
  public SoundContent sound() {
    return new SoundContent(get(Setting.IMPULSE), get(Setting.SWEEP));
  }

  public Optional<String> checkUnit() {
    return get(Setting.CHECK_UNIT);
  }

  public DriftMode drift() {
    return get(Setting.DRIFT);
  }

  /**
   * How far the lab expects its chain to have moved since its sensitivity was set, dB, 0 or more;
   * added to the calibrator's own limit when a reading is judged.
   */
  public double microphoneDriftDb() {
    return get(Setting.MICROPHONE_DRIFT_DB);
  }

  public Smoothing captureSmoothing() {
    return get(Setting.CAPTURE_SMOOTHING);
  }

  public PublishingRule publishing() {
    return get(Setting.PUBLISHING);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Settings settings && values.equals(settings.values);
  }

  @Override
  public int hashCode() {
    return values.hashCode();
  }

  @Override
  public String toString() {
    return values.toString();
  }
}
