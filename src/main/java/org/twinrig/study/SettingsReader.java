package org.twinrig.study;

import java.util.List;
import java.util.Optional;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Smoothing;

/** The keys of study.yaml that say how a study is computed and judged. */
final class SettingsReader {
  static final List<String> KEYS =
      List.of(
          "bands",
          "anchor",
          "confidence",
          "tolerance",
          "min_units",
          "zones",
          "resonance_search_hz",
          "screening",
          "model",
          "seed",
          "calibrator_class",
          "impulse",
          "sweep",
          "check_unit",
          "drift",
          "microphone_drift_db",
          "capture_smoothing",
          "publishing");

  private static final Settings DEFAULTS = Settings.defaults();
  private static final BandsReader.Axis DEFAULT_AXIS =
      new BandsReader.Axis(DEFAULTS.grid().perOctave(), new FrequencyRange(20, 20_000));

  private final YamlGroup root;
  private final List<String> fixtures;

  /**
   * A reader of settings.
   *
   * @param root the whole of study.yaml
   * @param fixtures the names a zone may belong to
   */
  SettingsReader(YamlGroup root, List<String> fixtures) {
    this.root = root;
    this.fixtures = fixtures;
  }

  /** Settings; where a value was refused, the default stands in and the problem is on record. */
  Settings read() {
    BandsReader.Axis axis =
        root.value("bands").map(v -> BandsReader.axis(v, DEFAULT_AXIS)).orElse(DEFAULT_AXIS);
    FrequencyRange range = axis.range();
    return new Settings(
        BandGrid.covering(range.fromHz(), range.toHz(), axis.perOctave()),
        root.value("anchor")
            .flatMap(v -> BandsReader.anchor(v, axis.perOctave()))
            .orElse(DEFAULTS.anchor()),
        root.value("confidence").flatMap(SettingsReader::confidence).orElse(DEFAULTS.confidence()),
        root.value("tolerance")
            .map(v -> new ToleranceReader(range.fromHz()).read(v, DEFAULTS.tolerance()))
            .orElse(DEFAULTS.tolerance()),
        root.value("min_units").flatMap(SettingsReader::minUnits).orElse(DEFAULTS.minUnits()),
        root.value("zones").map(new ZonesReader(fixtures)::read).orElse(DEFAULTS.zones()),
        root.value("resonance_search_hz")
            .flatMap(FrequencyReader::pair)
            .orElse(DEFAULTS.resonanceSearch()),
        root.value("screening").flatMap(SettingsReader::screening).orElse(DEFAULTS.screening()),
        root.value("model").flatMap(SettingsReader::model).orElse(DEFAULTS.model()),
        root.value("seed").flatMap(SettingsReader::seed).orElse(DEFAULTS.seed()),
        root.value("calibrator_class").flatMap(SettingsReader::calibratorClass),
        new SoundReader(root).read(DEFAULTS.sound()),
        new SessionRulesReader(root).read(),
        root.value("capture_smoothing")
            .flatMap(SettingsReader::smoothing)
            .orElse(DEFAULTS.captureSmoothing()),
        root.value("publishing")
            .map(v -> PublishingReader.read(v, DEFAULTS.publishing()))
            .orElse(DEFAULTS.publishing()));
  }

  private static Optional<Double> confidence(YamlValue value) {
    return value.number(
        share -> share >= Settings.LEAST_CONFIDENCE && share <= Settings.MOST_CONFIDENCE,
        "write a share from 0.5 to 0.9999, such as 0.95 for 95 %");
  }

  private static Optional<Integer> minUnits(YamlValue value) {
    return value
        .whole(
            Settings.FEWEST_UNITS,
            1_000_000,
            "write a whole number from 3 on: fewer units give no estimate")
        .map(Long::intValue);
  }

  private static Optional<ScreeningMode> screening(YamlValue value) {
    return value
        .group(List.of("apply"))
        .flatMap(group -> group.required("apply", "apply: suggest"))
        .flatMap(apply -> apply.choice(ScreeningMode.class));
  }

  private static Optional<PredictionModel> model(YamlValue value) {
    return value.choice(PredictionModel.class);
  }

  private static Optional<Long> seed(YamlValue value) {
    return value.whole(
        -999_999_999_999_999_999L,
        999_999_999_999_999_999L,
        "write a whole number of at most 18 digits");
  }

  private static Optional<CalibratorClass> calibratorClass(YamlValue value) {
    Optional<CalibratorClass> read = CalibratorClass.of(value.word());
    return read.isPresent()
        ? read
        : value.refuse("write the class of both calibrators after IEC 60942: `1`, `2` or `LS`");
  }

  /** A smoothing as the lab states it. */
  static Optional<Smoothing> smoothing(YamlValue value) {
    Optional<Smoothing> read = Smoothing.of(value.word());
    return read.isPresent() ? read : value.refuse(Smoothing.FORM);
  }
}
