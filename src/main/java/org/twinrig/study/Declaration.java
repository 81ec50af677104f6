package org.twinrig.study;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.twinrig.capture.Fixture;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/** What study.yaml says, every value checked and every file found. */
record Declaration(
    StudyPlace place,
    DataRoot dataRoot,
    String title,
    List<String> fixtures,
    Fixture from,
    Fixture to,
    Settings settings,
    Files files,
    Map<String, ReferencesReader.Found> references) {

  private static final List<String> KEYS =
      Stream.concat(
              Stream.of(
                  "title",
                  "from",
                  "to",
                  "fixtures",
                  "units",
                  "captures",
                  "sessions",
                  "catalogue",
                  "references",
                  "data_root"),
              Setting.ALL.stream().map(Setting::key))
          .toList();

  /** A file as the yaml names it, and where it is. */
  record Named(String name, Path path) {

    /** The folder it lies in. */
    Path folder() {
      return path.resolveSibling("");
    }
  }

  /** The files the yaml names. */
  record Files(Named units, Named captures, Optional<Named> sessions, Optional<Named> catalogue) {}

  /**
   * Reads the yaml.
   *
   * @throws UnusableInput with every problem of the file at once
   */
  static Declaration read(StudyPlace place) throws UnusableInput {
    List<Problem> problems = new ArrayList<>();
    YamlValue whole = YamlFile.read(place.yaml(), place.source(), problems);
    Optional<Declaration> read = whole.group(KEYS).flatMap(root -> declared(place, root));
    if (!problems.isEmpty()) {
      throw new UnusableInput(
          problems.stream().sorted(Comparator.comparingInt(Problem::line)).toList());
    }
    return read.orElseThrow();
  }

  private static Optional<Declaration> declared(StudyPlace place, YamlGroup root) {
    Optional<String> title =
        root.required("title", "title: Plate to head").flatMap(YamlValue::text);
    FixturesReader.Declared fixtures = FixturesReader.read(root);
    Optional<DataRoot> dataRoot = place.dataRoot(root);
    Optional<Files> files = dataRoot.flatMap(data -> files(place, data, root));
    Settings settings = Setting.read(root, fixtures.ofStudy());
    Optional<Map<String, ReferencesReader.Found>> references =
        dataRoot.flatMap(
            data ->
                root.value("references")
                    .map(new ReferencesReader(fixtures.names(), v -> named(place, data, v))::read));
    boolean whole = title.isPresent() && fixtures.from().isPresent() && fixtures.to().isPresent();
    return whole && files.isPresent()
        ? Optional.of(
            new Declaration(
                place,
                dataRoot.get(),
                title.get(),
                fixtures.names(),
                fixtures.from().get(),
                fixtures.to().get(),
                settings,
                files.get(),
                references.orElse(Map.of())))
        : Optional.empty();
  }

  private static Optional<Files> files(StudyPlace place, DataRoot data, YamlGroup root) {
    Optional<Named> units =
        root.required("units", "units: units.csv").flatMap(v -> named(place, data, v));
    Optional<Named> captures =
        root.required("captures", "captures: captures.csv").flatMap(v -> named(place, data, v));
    Optional<Named> sessions = root.value("sessions").flatMap(v -> named(place, data, v));
    Optional<Named> catalogue = root.value("catalogue").flatMap(v -> named(place, data, v));
    return units.isPresent() && captures.isPresent()
        ? Optional.of(new Files(units.get(), captures.get(), sessions, catalogue))
        : Optional.empty();
  }

  private static Optional<Named> named(StudyPlace place, DataRoot data, YamlValue value) {
    Optional<String> name = value.text();
    if (name.isEmpty()) {
      return Optional.empty();
    }
    DataRoot.Place found = data.file(place.realFolder(), name.get());
    if (found instanceof DataRoot.Place.Refused refused) {
      return value.problem(
          value.line(), "`" + value.name() + "`: " + refused.what(), refused.remedy());
    }
    return Optional.of(new Named(name.get(), ((DataRoot.Place.Inside) found).path()));
  }
}
