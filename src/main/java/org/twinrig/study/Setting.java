package org.twinrig.study;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.CalibratorClass;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Anchor;
import org.twinrig.response.Smoothing;
import org.twinrig.spectrum.ImpulseWindow;
import org.twinrig.spectrum.Sweep;

/**
 * One setting of study.yaml, described once: how it is read, what run.json and the report say of
 * it, and how the workbench asks for it. {@link #ALL} holds every one.
 */
@SuppressWarnings("OptionalMapToOptional") // a value that is read may be that there is none
public final class Setting<T> {

  public static final Setting<Bands> BANDS =
      new Setting<>(
          "bands",
          "Bands",
          "",
          new Bands(12, 20, 20_000),
          SettingReaders::bands,
          (b, all) -> group("per_octave", b.perOctave(), "from_hz", b.fromHz(), "to_hz", b.toHz()),
          (b, study) -> words(b.grid()),
          new Field(
              "bands.per_octave",
              "Bands per octave",
              "how finely the range is divided",
              BandGrid.SUPPORTED_PER_OCTAVE.stream().sorted().map(String::valueOf).toList()),
          new Field("bands.from_hz", "Lowest frequency", "Hz", List.of()),
          new Field("bands.to_hz", "Highest frequency", "Hz", List.of()));

  public static final Setting<Anchor> ANCHOR =
      new Setting<>(
          "anchor",
          "Anchor",
          "where levels are pinned: { from_hz: 500, to_hz: 1000 }, { at_hz: 1000 } or none",
          new Anchor.Range(500, 1000),
          SettingReaders::anchor,
          (anchor, all) -> value(anchor),
          (anchor, study) -> anchor.words());

  public static final Setting<Double> CONFIDENCE =
      new Setting<>(
          "confidence",
          "Confidence of every interval",
          "a share, such as 0.95",
          0.95,
          (value, so) -> value.number(NumberRange.CONFIDENCE),
          (share, study) -> Numbers.fixed(100 * share, 1) + " %");

  public static final Setting<Tolerance> TOLERANCE =
      new Setting<>(
          "tolerance",
          "Tolerance",
          "",
          new Tolerance(DbLimit.everywhere(1.5), DbLimit.everywhere(3.0), 0.5),
          SettingReaders::tolerance,
          (t, all) ->
              group(
                  "reliable_db", value(t.reliable()),
                  "caution_db", value(t.caution()),
                  "equivalence_db", t.equivalenceDb()),
          (t, study) ->
              String.format(
                  "reliable: half-width up to %s; caution: half-width up to %s; equivalent: mean"
                      + " difference up to %s dB",
                  t.reliable().words(), t.caution().words(), StudyText.flow(t.equivalenceDb())),
          new Field(
              "tolerance.reliable_db",
              "Reliable up to",
              "half-width of the prediction interval in dB",
              List.of()),
          new Field("tolerance.caution_db", "Caution up to", "half-width in dB", List.of()),
          new Field("tolerance.equivalence_db", "Equivalent up to", "dB", List.of()));

  public static final Setting<Integer> MIN_UNITS =
      new Setting<>(
          "min_units",
          "Fewest units",
          "of a kind, 3 or more",
          5,
          (value, so) ->
              value
                  .whole(
                      (long) NumberRange.MIN_UNITS.least(),
                      (long) NumberRange.MIN_UNITS.most(),
                      "write a whole number from 3 on: fewer units give no estimate")
                  .map(Long::intValue),
          (n, study) -> Numbers.count(n, "unit", "units") + " a kind");

  /** The workbench asks for zones in rows of their own. */
  public static final Setting<List<DeclaredZone>> ZONES =
      new Setting<>(
          "zones",
          "Zones declared by the lab",
          "",
          List.of(),
          SettingReaders::zones,
          (zones, all) -> zones.stream().map(Setting::value).toList(),
          (zones, study) ->
              zones.isEmpty()
                  ? "none"
                  : zones.stream().map(Setting::words).collect(Collectors.joining("; ")));

  /** By parts of the names of kinds; see {@link Settings#resonanceSearch}. */
  public static final Setting<Map<String, FrequencyRange>> RESONANCE_SEARCH_HZ =
      new Setting<>(
          "resonance_search_hz",
          "Resonances searched",
          "Hz, both ends, for all kinds or by kind: { in-ear: [4000, 15000], default: [5000, 12000] }",
          Map.of(
              "in-ear",
              new FrequencyRange(4000, 15_000),
              Settings.OTHER_KINDS,
              new FrequencyRange(5000, 12_000)),
          SettingReaders::resonances,
          (ranges, all) -> value(ranges),
          (ranges, study) ->
              ordered(ranges)
                  .map(e -> e.getKey() + " " + words(e.getValue().fromHz(), e.getValue().toHz()))
                  .collect(Collectors.joining("; "))
                  .replaceFirst("^" + Settings.OTHER_KINDS + " ", ""));

  public static final Setting<ScreeningMode> SCREENING =
      new Setting<>(
          "screening",
          "Screening",
          "",
          ScreeningMode.SUGGEST,
          (value, so) ->
              value
                  .group("apply")
                  .flatMap(
                      group ->
                          group.required("apply", "suggest", v -> v.choice(ScreeningMode.class))),
          (mode, all) -> group("apply", word(mode)),
          (mode, study) ->
              mode == ScreeningMode.EXCLUDE
                  ? "captures the rules do not believe are left out"
                  : "captures the rules doubt are reported, and used",
          new Field(
              "screening.apply",
              "Screening",
              "suggest: doubts are told; exclude: lost seals and odd seatings are left out;"
                  + " copies always",
              choices(ScreeningMode.SUGGEST)));

  public static final Setting<PredictionModel> MODEL =
      new Setting<>(
          "model",
          "Prediction of single units",
          "average: the mean transfer of the kind and what the old graph shows around a band, weighted;"
              + " offset: the mean transfer of the kind alone",
          PredictionModel.AVERAGE,
          (value, so) -> value.choice(PredictionModel.class),
          (model, study) -> word(model));

  public static final Setting<Long> SEED =
      new Setting<>(
          "seed",
          "Seed of random draws",
          "a whole number",
          1L,
          (value, so) ->
              value.whole(
                  -999_999_999_999_999_999L,
                  999_999_999_999_999_999L,
                  "write a whole number of at most 18 digits"),
          (seed, study) -> Long.toString(seed));

  public static final Setting<Optional<CalibratorClass>> CALIBRATOR_CLASS =
      new Setting<>(
          "calibrator_class",
          "Class of the calibrators (IEC 60942)",
          "LS, 1 or 2, each also with /M",
          Optional.empty(),
          (value, so) -> given(SettingReaders.calibratorClass(value)),
          (given, all) -> given.map(CalibratorClass::word).orElse(null),
          (given, study) -> {
            String from = words(study.calibratorClass(study.from()));
            String to = words(study.calibratorClass(study.to()));
            return from.equals(to)
                ? from
                : from + " on " + study.from().label() + ", " + to + " on " + study.to().label();
          });

  public static final Setting<ImpulseWindow> IMPULSE =
      new Setting<>(
          "impulse",
          "Window of impulse responses",
          "of sound files: { before_onset_ms: 2, length_ms: 500, fade_ms: 10 }",
          ImpulseWindow.defaults(),
          SettingReaders::window,
          (window, all) ->
              group(
                  "before_onset_ms", all.sound().beforeOnsetMs(),
                  "length_ms", window.lengthMs(),
                  "fade_ms", window.fadeMs()),
          (window, study) ->
              String.format(
                  "from %s ms before to %s ms after the onset, ends of %s ms",
                  Numbers.fixed(study.settings().sound().beforeOnsetMs(), 1),
                  Numbers.fixed(window.lengthMs(), 1),
                  Numbers.fixed(window.fadeMs(), 1)));

  public static final Setting<Optional<Sweep>> SWEEP =
      new Setting<>(
          "sweep",
          "Captures that are sound files",
          "recordings of a sweep: { from_hz: 10, to_hz: 22000, seconds: 10 }; else left empty",
          Optional.empty(),
          (value, so) -> given(SettingReaders.sweep(value)),
          (sweep, all) -> sweep.map(Setting::value).orElse(null),
          (sweep, study) -> sweep.map(Setting::words).orElse("impulse responses"));

  public static final Setting<Optional<String>> CHECK_UNIT =
      new Setting<>(
          "check_unit",
          "Check unit",
          "the unit that was captured in every session",
          Optional.empty(),
          (value, so) -> given(SettingReaders.checkUnit(value, so)),
          (unit, study) -> unit.map(name -> name + part(study, name)).orElse("none"));

  public static final Setting<DriftMode> DRIFT =
      new Setting<>(
          "drift",
          "Drift of the check unit",
          "report: it is told, and no capture is changed; correct: it is taken out of the captures"
              + " of its session, which needs a check_unit",
          DriftMode.REPORT,
          SettingReaders::drift,
          (mode, study) ->
              mode == DriftMode.CORRECT ? "sessions are corrected for it" : "reported only");

  public static final Setting<Double> MICROPHONE_DRIFT_DB =
      new Setting<>(
          "microphone_drift_db",
          "Drift allowed to the chain",
          "dB since its sensitivity was set, 0 to 20",
          0.0,
          (value, so) ->
              value.number(
                  NumberRange.of(0, 20, "how far the chain may have moved, in dB from 0 to 20")),
          (db, study) -> StudyText.flow(db) + " dB beside the calibrator's own limit");

  public static final Setting<Smoothing> CAPTURE_SMOOTHING =
      new Setting<>(
          "capture_smoothing",
          "Captures as they came",
          "none, or smoothed to 1/1 to 1/48 octave; in decibels 1/6 db",
          Smoothing.NONE,
          (value, so) -> smoothing(value),
          (smoothing, all) -> smoothing.word(),
          (smoothing, study) -> smoothing.plain());

  public static final Setting<PublishingRule> PUBLISHING =
      new Setting<>(
          "publishing",
          "Published",
          "the range readers compare by and how much of it a graph may lose:"
              + " { from_hz: 100, to_hz: 10000, lost_octaves: 1 }",
          PublishingRule.standard(),
          SettingReaders::publishing,
          (rule, all) ->
              group(
                  "from_hz", rule.compared().fromHz(),
                  "to_hz", rule.compared().toHz(),
                  "lost_octaves", rule.lostOctaves()),
          (rule, study) ->
              "graphs that lose at most "
                  + StudyText.flow(rule.lostOctaves())
                  + (rule.lostOctaves() == 1 ? " octave of " : " octaves of ")
                  + words(rule.compared().fromHz(), rule.compared().toHz()));

  public static final Setting<Optional<LocalDate>> VALID_UNTIL =
      new Setting<>(
          "valid_until",
          "Valid until",
          "the last day for which the study is to be used, such as 2027-03-31; else left empty",
          Optional.empty(),
          (value, so) -> given(SettingReaders.day(value)),
          (day, all) -> day.map(LocalDate::toString).orElse(null),
          (day, study) -> day.map(LocalDate::toString).orElse("not stated"));

  /** Every setting; those that the reading of others asks for come before them. */
  public static final List<Setting<?>> ALL =
      List.of(
          BANDS,
          ANCHOR,
          CONFIDENCE,
          TOLERANCE,
          MIN_UNITS,
          ZONES,
          RESONANCE_SEARCH_HZ,
          SCREENING,
          MODEL,
          SEED,
          CALIBRATOR_CLASS,
          IMPULSE,
          SWEEP,
          CHECK_UNIT,
          DRIFT,
          MICROPHONE_DRIFT_DB,
          CAPTURE_SMOOTHING,
          PUBLISHING,
          VALID_UNTIL);

  private final String key;
  private final String label;
  private final T standard;
  private final Reader<T> reader;
  private final BiFunction<T, Settings, Object> value;
  private final BiFunction<T, Study, String> words;
  private final List<Field> fields;

  private Setting(
      String key,
      String label,
      String hint,
      T standard,
      Reader<T> reader,
      BiFunction<T, Study, String> words) {
    this(key, label, hint, standard, reader, (v, all) -> value(v), words);
  }

  /** A setting with a hint is one field of the settings page; one without is these or none. */
  private Setting(
      String key,
      String label,
      String hint,
      T standard,
      Reader<T> reader,
      BiFunction<T, Settings, Object> value,
      BiFunction<T, Study, String> words,
      Field... parts) {
    this.key = key;
    this.label = label;
    this.standard = standard;
    this.reader = reader;
    this.value = value;
    this.words = words;
    this.fields =
        hint.isEmpty() ? List.of(parts) : List.of(new Field(key, label, hint, choices(standard)));
  }

  /** Takes a value from study.yaml; one that gives nothing has said why. */
  interface Reader<T> {
    Optional<T> read(YamlValue value, Context so);
  }

  /** What a value is read beside: the whole file, the fixtures' names, the settings before it. */
  record Context(YamlGroup root, List<String> fixtures, Settings before) {}

  /**
   * A field of the settings page: its key or {@code group.key}, label, what may be written there,
   * and the only values there are, if it is not written freely.
   */
  public record Field(String key, String label, String hint, List<String> choices) {
    /** The value in force as study.yaml would write it; empty where there is none. */
    public String text(Settings settings) {
      int dot = key.indexOf('.');
      String name = dot < 0 ? key : key.substring(0, dot);
      Setting<?> owner = ALL.stream().filter(s -> s.key.equals(name)).findFirst().orElseThrow();
      Object whole = owner.value(settings);
      return StudyText.flow(dot < 0 ? whole : ((Map<?, ?>) whole).get(key.substring(dot + 1)));
    }
  }

  /** As study.yaml names it. */
  public String key() {
    return key;
  }

  /** As the report names it. */
  public String label() {
    return label;
  }

  T standard() {
    return standard;
  }

  /** The fields of the settings page that change it; none for the zones. */
  public List<Field> fields() {
    return fields;
  }

  /** The value in force: a number, a text, a list, a map of such, or null where there is none. */
  public Object value(Settings settings) {
    return value.apply(settings.get(this), settings);
  }

  /** The value in force in words. */
  public String words(Study study) {
    return words.apply(study.settings().get(this), study);
  }

  /**
   * Reads all settings; where a value was refused, the standard stands in and the problem is on
   * record.
   */
  static Settings read(YamlGroup root, List<String> fixtures) {
    Settings settings = Settings.defaults();
    for (Setting<?> setting : ALL) {
      settings = setting.readInto(new Context(root, fixtures, settings));
    }
    return settings;
  }

  private Settings readInto(Context so) {
    return so.root()
        .value(key)
        .flatMap(given -> reader.read(given, so))
        .map(read -> so.before().with(this, read))
        .orElse(so.before());
  }

  @Override
  public String toString() {
    return key;
  }

  /** A value that a study may also lack. */
  static <V> Optional<Optional<V>> given(Optional<V> read) {
    return read.isPresent() ? Optional.of(read) : Optional.empty();
  }

  /** A smoothing as the lab states it. */
  static Optional<Smoothing> smoothing(YamlValue value) {
    return Smoothing.of(value.word()).or(() -> value.refuse(Smoothing.FORM));
  }

  private static Map<String, Object> group(Object... keysAndValues) {
    Map<String, Object> group = new LinkedHashMap<>();
    for (int k = 0; k < keysAndValues.length; k += 2) {
      group.put((String) keysAndValues[k], keysAndValues[k + 1]);
    }
    return group;
  }

  private static Object value(Anchor anchor) {
    if (anchor instanceof Anchor.Range range) {
      return group("from_hz", range.fromHz(), "to_hz", range.toHz());
    }
    return anchor instanceof Anchor.Frequency at ? group("at_hz", at.hz()) : "none";
  }

  private static Object value(DbLimit limit) {
    return limit.steps().size() == 1
        ? limit.smallestDb()
        : limit.steps().stream().map(s -> group("from_hz", s.fromHz(), "db", s.db())).toList();
  }

  private static Object value(Map<String, FrequencyRange> ranges) {
    Map<String, Object> group = new LinkedHashMap<>();
    ordered(ranges)
        .forEach(e -> group.put(e.getKey(), List.of(e.getValue().fromHz(), e.getValue().toHz())));
    return group.size() == 1 ? group.get(Settings.OTHER_KINDS) : group;
  }

  /** By name, the one for all other kinds last. */
  private static Stream<Map.Entry<String, FrequencyRange>> ordered(
      Map<String, FrequencyRange> ranges) {
    return ranges.entrySet().stream()
        .sorted(
            Map.Entry.comparingByKey(
                Comparator.<String, Boolean>comparing(Settings.OTHER_KINDS::equals)
                    .thenComparing(Comparator.naturalOrder())));
  }

  private static Object value(DeclaredZone zone) {
    return group(
        "name", zone.name(),
        "fixture", zone.fixture(),
        "from_hz", zone.fromHz(),
        "to_hz", zone.toHz());
  }

  private static Object value(Sweep sweep) {
    return group(
        "from_hz", sweep.fromHz(),
        "to_hz", sweep.toHz(),
        "seconds", sweep.seconds(),
        "fade_in_ms", sweep.fadeInMs(),
        "fade_out_ms", sweep.fadeOutMs());
  }

  /** A number, a text, a choice, or any of these that may be missing. */
  private static Object value(Object plain) {
    Object there = plain instanceof Optional<?> given ? given.orElse(null) : plain;
    return there instanceof Enum<?> constant ? word(constant) : there;
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }

  private static List<String> choices(Object value) {
    return value instanceof Enum<?> constant
        ? Arrays.stream(constant.getDeclaringClass().getEnumConstants()).map(Setting::word).toList()
        : List.of();
  }

  private static String words(double fromHz, double toHz) {
    return Numbers.hertz(fromHz) + " to " + Numbers.hertz(toHz);
  }

  private static String words(BandGrid grid) {
    String range = words(grid.lowerHz(), grid.upperHz());
    return "1/" + grid.perOctave() + " octave, " + grid.size() + " bands from " + range;
  }

  private static String words(Optional<CalibratorClass> limits) {
    return limits.map(CalibratorClass::word).orElse("not known");
  }

  private static String words(DeclaredZone zone) {
    return zone.name() + ": " + words(zone.fromHz(), zone.toHz());
  }

  private static String words(Sweep sweep) {
    String range = words(sweep.fromHz(), sweep.toHz());
    return "recordings of a sweep from "
        + range
        + " in "
        + Numbers.fixed(sweep.seconds(), 2)
        + " s";
  }

  private static String part(Study study, String checkUnit) {
    boolean check =
        study.units().stream()
            .anyMatch(u -> u.name().equals(checkUnit) && u.role() == Unit.Role.CHECK);
    return check ? "; it has no part in the transfer" : "; it is also used like any other unit";
  }
}
