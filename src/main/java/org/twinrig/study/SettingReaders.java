package org.twinrig.study;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.CalibratorClass;
import org.twinrig.intake.NearestName;
import org.twinrig.internal.Numbers;
import org.twinrig.response.Anchor;
import org.twinrig.spectrum.ImpulseWindow;
import org.twinrig.spectrum.Sweep;

/**
 * How the values of the settings that are more than one number or word are read from study.yaml.
 * What gives nothing has told why.
 */
final class SettingReaders {
  private static final String ANCHORS =
      "write `{ from_hz: 500, to_hz: 1000 }`, `{ at_hz: 1000 }` or `none`";
  private static final String TOLERANCES =
      "write a number in dB, or a table such as `[{ from_hz: 20, db: 1.5 }, { from_hz: 4000, db: 2 }]`";

  private SettingReaders() {}

  static Optional<Bands> bands(YamlValue value, Setting.Context so) {
    Bands standard = Setting.BANDS.standard();
    Optional<YamlGroup> read = value.group("per_octave", "from_hz", "to_hz");
    if (read.isEmpty()) {
      return Optional.empty();
    }
    YamlGroup group = read.get();
    int perOctave =
        group.value("per_octave").flatMap(SettingReaders::perOctave).orElse(standard.perOctave());
    // A misspelt end is not the standard one: nothing is concluded from the two together.
    if (group.misspelt("from_hz") || group.misspelt("to_hz")) {
      return Optional.of(new Bands(perOctave, standard.fromHz(), standard.toHz()));
    }
    double fromHz = group.number("from_hz", standard.fromHz(), NumberRange.HZ);
    double toHz = group.number("to_hz", standard.toHz(), NumberRange.HZ);
    return group
        .range(fromHz, toHz)
        .filter(range -> holdsBand(value, range, perOctave))
        .map(range -> new Bands(perOctave, fromHz, toHz));
  }

  private static Optional<Integer> perOctave(YamlValue value) {
    String remedy = "write 1, 3, 6, 12, 24 or 48";
    return value
        .whole(1, 48, remedy)
        .map(Long::intValue)
        .flatMap(
            n -> BandGrid.SUPPORTED_PER_OCTAVE.contains(n) ? Optional.of(n) : value.refuse(remedy));
  }

  private static boolean holdsBand(YamlValue owner, FrequencyRange range, int perOctave) {
    try {
      return BandGrid.covering(range.fromHz(), range.toHz(), perOctave).size() > 0;
    } catch (IllegalArgumentException tooNarrow) {
      String clause = " holds no band of 1/" + perOctave + " octave";
      owner.amiss(clause, "widen the range, or use more bands per octave");
      return false;
    }
  }

  static Optional<Anchor> anchor(YamlValue value, Setting.Context so) {
    if (!value.isGroup()) {
      return "none".equals(value.word()) ? Optional.of(new Anchor.None()) : value.refuse(ANCHORS);
    }
    int perOctave = so.before().get(Setting.BANDS).perOctave();
    return value
        .group("from_hz", "to_hz", "at_hz")
        .flatMap(group -> anchor(value, group, perOctave));
  }

  private static Optional<Anchor> anchor(YamlValue value, YamlGroup group, int perOctave) {
    List<String> keys = group.keys();
    if (keys.equals(List.of("at_hz"))) {
      double atHz = group.number("at_hz", "1000", NumberRange.HZ);
      return group.ifSound(() -> new Anchor.Frequency(atHz));
    }
    if (group.misspelt("from_hz") || group.misspelt("to_hz") || group.misspelt("at_hz")) {
      return Optional.empty(); // what is missing then stands there, and was told of
    }
    if (keys.size() != 2 || keys.contains("at_hz")) {
      return value.amiss(" is neither one frequency nor a range of two", ANCHORS);
    }
    double fromHz = group.number("from_hz", "500", NumberRange.HZ);
    double toHz = group.number("to_hz", "1000", NumberRange.HZ);
    return group
        .range(fromHz, toHz)
        .filter(range -> holdsBand(value, range, perOctave))
        .map(range -> new Anchor.Range(fromHz, toHz));
  }

  static Optional<PublishingRule> publishing(YamlValue value, Setting.Context so) {
    PublishingRule standard = Setting.PUBLISHING.standard();
    return value
        .group("from_hz", "to_hz", "lost_octaves")
        .flatMap(
            group -> {
              double fromHz = group.number("from_hz", standard.compared().fromHz(), NumberRange.HZ);
              double toHz = group.number("to_hz", standard.compared().toHz(), NumberRange.HZ);
              double lost =
                  group.number("lost_octaves", standard.lostOctaves(), NumberRange.OCTAVES);
              Optional<FrequencyRange> compared = group.range(fromHz, toHz);
              return group.ifSound(() -> new PublishingRule(compared.get(), lost));
            });
  }

  static Optional<Tolerance> tolerance(YamlValue value, Setting.Context so) {
    Optional<YamlGroup> read = value.group("reliable_db", "caution_db", "equivalence_db");
    if (read.isEmpty()) {
      return Optional.empty();
    }
    YamlGroup group = read.get();
    Tolerance standard = Setting.TOLERANCE.standard();
    double lowestHz = so.before().get(Setting.BANDS).fromHz(); // where every table has to begin
    DbLimit reliable = limit(group, "reliable_db", standard.reliable(), lowestHz);
    DbLimit caution = limit(group, "caution_db", standard.caution(), lowestHz);
    double equivalenceDb =
        group.value("equivalence_db").flatMap(v -> db(v)).orElse(standard.equivalenceDb());
    OptionalDouble amissHz = Tolerance.outOfOrderHz(reliable, caution);
    if (amissHz.isPresent()) {
      double hz = amissHz.getAsDouble();
      YamlValue at = group.value("caution_db").orElse(value);
      return at.problem(
          at.line(),
          String.format(
              "`tolerance.caution_db` is %s dB at %s, but `reliable_db` is %s dB there",
              StudyText.flow(caution.atHz(hz)),
              Numbers.hertz(hz),
              StudyText.flow(reliable.atHz(hz))),
          "caution must allow at least as much (where left out: 1.5 and 3 dB)");
    }
    return Optional.of(new Tolerance(reliable, caution, equivalenceDb));
  }

  private static DbLimit limit(YamlGroup group, String key, DbLimit standard, double lowestHz) {
    return group
        .value(key)
        .flatMap(v -> v.isList() ? steps(v, lowestHz) : db(v).map(DbLimit::everywhere))
        .orElse(standard);
  }

  private static Optional<DbLimit> steps(YamlValue value, double lowestHz) {
    List<DbLimit.Step> steps = new ArrayList<>();
    for (YamlValue row : value.list(TOLERANCES).orElse(List.of())) {
      Optional<DbLimit.Step> step = row.group("from_hz", "db").flatMap(SettingReaders::step);
      if (step.isEmpty()) {
        return Optional.empty();
      }
      if (!steps.isEmpty() && step.get().fromHz() <= steps.get(steps.size() - 1).fromHz()) {
        return row.amiss(" does not rise in frequency", "sort the table by from_hz");
      }
      steps.add(step.get());
    }
    if (steps.isEmpty() || steps.get(0).fromHz() > lowestHz) {
      return value.amiss(
          " says nothing about the lowest bands",
          "begin the table at " + StudyText.flow(lowestHz) + " Hz or below");
    }
    return Optional.of(new DbLimit(steps));
  }

  private static Optional<DbLimit.Step> step(YamlGroup group) {
    double fromHz = group.number("from_hz", "20", NumberRange.HZ);
    double db = group.required("db", "1.5", SettingReaders::db).orElse(Double.NaN);
    return group.ifSound(() -> new DbLimit.Step(fromHz, db));
  }

  private static Optional<Double> db(YamlValue value) {
    return value.isGroup() || value.isList()
        ? value.refuse(TOLERANCES)
        : value.number(NumberRange.LIMIT_DB);
  }

  static Optional<CalibratorClass> calibratorClass(YamlValue value) {
    return CalibratorClass.of(value.word())
        .or(
            () ->
                value.refuse(
                    "write the class of the calibrator after IEC 60942: `1`, `2` or `LS`, each also"
                        + " with `/M`"));
  }

  /** One range, for all kinds; or some by parts of the kinds' names, beside the standard ones. */
  static Optional<Map<String, FrequencyRange>> resonances(YamlValue value, Setting.Context so) {
    if (!value.isGroup()) {
      return value.range().map(range -> Map.of(Settings.OTHER_KINDS, range));
    }
    Map<String, FrequencyRange> ranges = new HashMap<>(Setting.RESONANCE_SEARCH_HZ.standard());
    return value
        .group()
        .flatMap(
            group -> {
              for (String name : group.keys()) {
                group
                    .required(name, "[5000, 12000]", YamlValue::range)
                    .ifPresent(range -> ranges.put(name, range));
              }
              return group.ifSound(() -> Map.copyOf(ranges));
            });
  }

  static Optional<LocalDate> day(YamlValue value) {
    try {
      return Optional.of(LocalDate.parse(value.word()));
    } catch (DateTimeParseException e) {
      return value.refuse("write a day as in `2027-03-31`, or leave the key out");
    }
  }

  static Optional<List<DeclaredZone>> zones(YamlValue value, Setting.Context so) {
    return value
        .list("write a list of zones, each beginning with `-`, or `[]` for none")
        .map(list -> list.stream().flatMap(each -> zone(each, so.fixtures()).stream()).toList());
  }

  private static Optional<DeclaredZone> zone(YamlValue value, List<String> fixtures) {
    return value
        .group("name", "fixture", "from_hz", "to_hz")
        .flatMap(
            group -> {
              String name = group.text("name", "canal entrance resonance");
              String example = fixtures.isEmpty() ? "plate" : fixtures.get(0);
              Optional<String> fixture =
                  group.required("fixture", example, v -> fixture(v, fixtures));
              double fromHz = group.number("from_hz", "8000", NumberRange.HZ);
              double toHz = group.number("to_hz", "10000", NumberRange.HZ);
              group.range(fromHz, toHz);
              return group.ifSound(() -> new DeclaredZone(name, fixture.get(), fromHz, toHz));
            });
  }

  private static Optional<String> fixture(YamlValue value, List<String> fixtures) {
    Optional<String> name = value.text();
    // A study without fixtures is refused for that.
    if (name.isEmpty() || fixtures.isEmpty() || fixtures.contains(name.get())) {
      return name;
    }
    String all = fixtures.stream().map(f -> "`" + f + "`").collect(Collectors.joining(" and "));
    return value.refuse(
        NearestName.question(name.get(), fixtures) + "this study's fixtures are " + all);
  }

  static Optional<ImpulseWindow> window(YamlValue value, Setting.Context so) {
    Optional<YamlGroup> read = value.group("before_onset_ms", "length_ms", "fade_ms");
    if (read.isEmpty()) {
      return Optional.empty();
    }
    YamlGroup group = read.get();
    Optional<YamlValue> before = group.value("before_onset_ms");
    if (so.root().value("sweep").isPresent() && before.isPresent()) {
      return before
          .get()
          .amiss(
              " has no effect beside `sweep`",
              "leave it out: with a sweep the window opens as early as the second harmonic allows");
    }
    ImpulseWindow standard = Setting.IMPULSE.standard();
    double beforeMs = group.number("before_onset_ms", standard.beforeOnsetMs(), ms(0, 100));
    double lengthMs = group.number("length_ms", standard.lengthMs(), ms(5, 2000));
    double half = (Double.isNaN(lengthMs) ? standard.lengthMs() : lengthMs) / 2;
    double fadeMs = group.number("fade_ms", Math.min(standard.fadeMs(), half), ms(0, half));
    return group.ifSound(() -> new ImpulseWindow(beforeMs, lengthMs, fadeMs));
  }

  private static NumberRange ms(double least, double most) {
    return NumberRange.of(
        least, most, "a time in ms from " + StudyText.flow(least) + " to " + StudyText.flow(most));
  }

  static Optional<Sweep> sweep(YamlValue value) {
    return value
        .group("from_hz", "to_hz", "seconds", "fade_in_ms", "fade_out_ms")
        .flatMap(
            group -> {
              double fromHz = group.number("from_hz", "10", NumberRange.HZ);
              double toHz = group.number("to_hz", "22000", NumberRange.HZ);
              group.range(fromHz, toHz);
              NumberRange length = NumberRange.of(0.5, 60, "a time in seconds from 0.5 to 60");
              double seconds = group.number("seconds", "10", length);
              double fadeInMs = group.number("fade_in_ms", 0, ms(0, 100));
              double fadeOutMs = group.number("fade_out_ms", 0, ms(0, 100));
              return group
                  .ifSound(() -> new Sweep(fromHz, toHz, seconds, fadeInMs, fadeOutMs))
                  .filter(sweep -> wideEnough(value, sweep));
            });
  }

  /** Below an octave there is no second harmonic to keep out and nothing to compare. */
  private static boolean wideEnough(YamlValue value, Sweep sweep) {
    if (sweep.toHz() >= 2 * sweep.fromHz()) {
      return true;
    }
    String ends = Numbers.hertz(sweep.fromHz()) + " to " + Numbers.hertz(sweep.toHz());
    value.amiss(" runs from " + ends + ", less than an octave", "give the sweep as it was played");
    return false;
  }

  static Optional<String> checkUnit(YamlValue value, Setting.Context so) {
    return so.root().value("sessions").isPresent()
        ? value.text()
        : value.refuse("name the table of `sessions` too: the unit is compared between sessions");
  }

  static Optional<DriftMode> drift(YamlValue value, Setting.Context so) {
    Optional<DriftMode> mode = value.choice(DriftMode.class);
    if (mode.isEmpty() || mode.get() == DriftMode.REPORT) {
      return mode;
    }
    if (so.root().value("check_unit").isEmpty()) {
      return value.refuse(
          "name the `check_unit` that was captured in every session, or write `drift: report`");
    }
    // A check unit that was refused leaves nothing to correct by; the study is not run then anyway.
    return so.before().get(Setting.CHECK_UNIT).isPresent() ? mode : Optional.empty();
  }
}
