package org.twinrig.study;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.CalibratorClass;
import org.twinrig.capture.Fixture;
import org.twinrig.intake.CaptureFile;
import org.twinrig.intake.NearestName;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Smoothing;

/**
 * What study.yaml says, every value checked and every file found, with notes on how it was taken.
 */
record Declaration(
    StudyPlace place,
    DataRoot dataRoot,
    String title,
    List<String> fixtures,
    Fixture from,
    Fixture to,
    Settings settings,
    Named units,
    Named captures,
    Optional<Named> sessions,
    Optional<Named> catalogue,
    Map<String, ReferenceCurve> references,
    List<Problem> notes) {

  private static final String OWN_KEYS =
      "title from to fixtures units captures sessions catalogue references data_root";

  /** A calibrator that is known worse than this is none. */
  private static final NumberRange CALIBRATOR_DB =
      NumberRange.of(0.001, 3, "the expanded uncertainty (k = 2) in dB, from 0.001 to 3");

  /** A file as the yaml names it, and where it is. */
  record Named(String name, Path path) {

    /** The folder it lies in. */
    Path folder() {
      return path.resolveSibling("");
    }
  }

  /** Reads the yaml; refuses it with every problem of the file at once. */
  static Declaration read(StudyPlace place) throws UnusableInput {
    List<Problem> problems = new ArrayList<>();
    return YamlFile.read(place.yaml(), place.source(), problems)
        .group(keys().toArray(String[]::new))
        .flatMap(root -> declared(place, root, problems))
        .orElseThrow(
            () ->
                new UnusableInput(
                    problems.stream()
                        .filter(p -> p.kind() != Problem.Kind.NOTE)
                        .sorted(Comparator.comparingInt(Problem::line))
                        .toList()));
  }

  /** The keys of the whole file: its own, and every setting. */
  static List<String> keys() {
    return Stream.concat(Stream.of(OWN_KEYS.split(" ", -1)), Setting.ALL.stream().map(Setting::key))
        .toList();
  }

  private static Optional<Declaration> declared(
      StudyPlace place, YamlGroup root, List<Problem> problems) {
    String title = root.text("title", "Plate to head");
    Optional<YamlGroup> group =
        root.required(
            "fixtures",
            "{ plate: { label: …, usable_hz: [20, 16000] }, head: … }",
            YamlValue::group);
    List<String> names = group.map(YamlGroup::keys).orElse(List.of());
    Map<String, Fixture> fixtures = new HashMap<>();
    for (String name : names) {
      YamlValue value = group.get().value(name).orElseThrow();
      fixture(name, value).ifPresent(fixture -> fixtures.put(name, fixture));
    }
    Optional<String> from = root.required("from", "plate", v -> fixture(v, group));
    Optional<String> to = root.required("to", "head", v -> fixture(v, group));
    if (from.isPresent() && from.equals(to)) {
      String remedy = "name two different fixtures, because `from` is `" + from.get() + "` too";
      root.value("to").orElseThrow().refuse(remedy);
    }
    Optional<Fixture> old = from.map(fixtures::get);
    Optional<Fixture> now = to.map(fixtures::get);
    boolean both = old.isPresent() && now.isPresent();
    Settings settings = Setting.read(root, both ? List.of(from.get(), to.get()) : names);
    Optional<DataRoot> dataRoot = place.dataRoot(root);
    if (dataRoot.isEmpty()) {
      return Optional.empty();
    }
    Function<YamlValue, Optional<Named>> file = value -> named(place, dataRoot.get(), value);
    Optional<Named> units = root.required("units", "units.csv", file);
    Optional<Named> captures = root.required("captures", "captures.csv", file);
    Optional<Named> sessions = root.value("sessions").flatMap(file);
    Optional<Named> catalogue = root.value("catalogue").flatMap(file);
    Map<String, ReferenceCurve> references =
        root.value("references").map(v -> references(v, names, file)).orElse(Map.of());
    return problems.stream().allMatch(p -> p.kind() == Problem.Kind.NOTE)
        ? Optional.of(
            new Declaration(
                place,
                dataRoot.get(),
                title,
                names,
                old.get(),
                now.get(),
                settings,
                units.get(),
                captures.get(),
                sessions,
                catalogue,
                references,
                List.copyOf(problems)))
        : Optional.empty();
  }

  private static Optional<Fixture> fixture(String name, YamlValue value) {
    return value
        .group(
            "label",
            "ear_simulator",
            "simulates_hz",
            "usable_hz",
            "specified_hz",
            "specimen",
            "calibrator_class",
            "calibrator_uncertainty_db")
        .flatMap(
            group -> {
              String label = group.text("label", "Flat-plate ear simulator");
              Optional<String> earSimulator = group.optional("ear_simulator", "", YamlValue::text);
              Optional<String> specimen = group.optional("specimen", "", YamlValue::text);
              Optional<Optional<FrequencyRange>> simulates = range(group, "simulates_hz");
              Optional<Optional<FrequencyRange>> usable = usable(group);
              if (simulates.isPresent() && usable.isPresent()) {
                noteBeyond(group, simulates.get(), usable.get());
              }
              Optional<Optional<CalibratorClass>> calibrators =
                  group.optional(
                      "calibrator_class",
                      Optional.empty(),
                      v -> Setting.given(SettingReaders.calibratorClass(v)));
              Optional<OptionalDouble> uncertainty =
                  group.optional(
                      "calibrator_uncertainty_db",
                      OptionalDouble.empty(),
                      v -> v.number(CALIBRATOR_DB).map(OptionalDouble::of));
              return group.ifSound(
                  () ->
                      new Fixture(
                          name,
                          label,
                          earSimulator.get(),
                          simulates.get(),
                          usable.get(),
                          specimen.get(),
                          calibrators.get(),
                          uncertainty.get()));
            });
  }

  private static Optional<Optional<FrequencyRange>> range(YamlGroup group, String key) {
    return group.optional(key, Optional.empty(), v -> Setting.given(v.range()));
  }

  private static void noteBeyond(
      YamlGroup group, Optional<FrequencyRange> simulates, Optional<FrequencyRange> usable) {
    if (simulates.isPresent()
        && usable.isPresent()
        && (simulates.get().fromHz() < usable.get().fromHz()
            || simulates.get().toHz() > usable.get().toHz())) {
      group
          .value("simulates_hz")
          .orElseThrow()
          .note(
              "`simulates_hz` reaches beyond the range the fixture is usable in; one of the two is"
                  + " wrong, and bands outside the usable range are caution at best");
    }
  }

  /** The range a fixture is usable in; an older study calls it the specified one. */
  private static Optional<Optional<FrequencyRange>> usable(YamlGroup group) {
    Optional<YamlValue> older = group.value("specified_hz");
    if (older.isEmpty()) {
      return range(group, "usable_hz");
    }
    if (group.value("usable_hz").isPresent()) {
      older.get().amiss(" stands beside `usable_hz`", "keep `usable_hz`");
      return range(group, "usable_hz");
    }
    older.get().note("`specified_hz` is taken for `usable_hz`: where a fixture can be used at all");
    return range(group, "specified_hz");
  }

  /** The name of a fixture; any where the fixtures cannot be read. */
  private static Optional<String> fixture(YamlValue value, Optional<YamlGroup> fixtures) {
    Optional<String> name = value.text();
    if (name.isEmpty() || fixtures.isEmpty() || fixtures.get().value(name.get()).isPresent()) {
      return name;
    }
    return value.refuse(declaredFixtures(name.get(), fixtures.get().keys()));
  }

  private static String declaredFixtures(String misspelt, List<String> names) {
    return NearestName.question(misspelt, names)
        + "fixtures declared here: "
        + String.join(", ", names);
  }

  private static Optional<Named> named(StudyPlace place, DataRoot data, YamlValue value) {
    Optional<String> name = value.text();
    if (name.isEmpty()) {
      return Optional.empty();
    }
    DataRoot.Place found = data.file(place.realFolder(), name.get());
    if (found instanceof DataRoot.Place.Refused refused) {
      return value.amiss(": " + refused.what(), refused.remedy());
    }
    return Optional.of(new Named(name.get(), ((DataRoot.Place.Inside) found).path()));
  }

  /** The curve subtracted on each fixture; one that was refused is missing. */
  private static Map<String, ReferenceCurve> references(
      YamlValue value, List<String> fixtures, Function<YamlValue, Optional<Named>> file) {
    Map<String, ReferenceCurve> references = new LinkedHashMap<>();
    Optional<YamlGroup> group = value.group();
    for (String name : group.map(YamlGroup::keys).orElse(List.of())) {
      YamlValue one = group.get().value(name).orElseThrow();
      if (fixtures.contains(name)) {
        reference(one, file).ifPresent(curve -> references.put(name, curve));
      } else {
        one.amiss(" is no fixture of the study", declaredFixtures(name, fixtures));
      }
    }
    return references;
  }

  private static Optional<ReferenceCurve> reference(
      YamlValue value, Function<YamlValue, Optional<Named>> files) {
    Optional<YamlGroup> read = value.group("file", "smoothing");
    if (read.isEmpty()) {
      return Optional.empty();
    }
    YamlGroup group = read.get();
    Optional<Named> file = group.required("file", "reference.csv", files);
    Optional<Optional<Smoothing>> smoothing =
        group.optional("smoothing", Optional.empty(), v -> Setting.given(Setting.smoothing(v)));
    if (file.isEmpty() || smoothing.isEmpty()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new ReferenceCurve(
              file.get().name(),
              smoothing.get(),
              CaptureFile.read(file.get().path(), file.get().name()).response()));
    } catch (UnusableInput e) {
      return value.problems(e.problems());
    }
  }
}
