package org.twinrig.study;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.twinrig.intake.CaptureFile;
import org.twinrig.intake.NearestName;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Smoothing;

/** The key {@code references} of study.yaml: the curve subtracted on each fixture. */
final class ReferencesReader {
  private static final List<String> KEYS = List.of("file", "smoothing");

  private final List<String> fixtures;
  private final Function<YamlValue, Optional<Declaration.Named>> files;

  /**
   * A reader of references.
   *
   * @param fixtures the names a curve may belong to
   * @param files finds the file a value names
   */
  ReferencesReader(List<String> fixtures, Function<YamlValue, Optional<Declaration.Named>> files) {
    this.fixtures = fixtures;
    this.files = files;
  }

  /** A curve and where it lies. */
  record Found(ReferenceCurve reference, Path path) {}

  /** The curves by fixture; one that was refused is missing and the problem is on record. */
  Map<String, Found> read(YamlValue value) {
    Map<String, Found> found = new LinkedHashMap<>();
    value
        .group(List.of())
        .ifPresent(
            group ->
                group
                    .keys()
                    .forEach(
                        name ->
                            group
                                .value(name)
                                .flatMap(v -> known(name, v))
                                .flatMap(this::reference)
                                .ifPresent(f -> found.put(name, f))));
    return found;
  }

  private Optional<YamlValue> known(String name, YamlValue value) {
    if (fixtures.contains(name)) {
      return Optional.of(value);
    }
    String guess = NearestName.question(name, fixtures);
    return value.problem(
        value.line(),
        "`" + value.name() + "` is no fixture of the study",
        guess + "fixtures declared here: " + String.join(", ", fixtures));
  }

  private Optional<Found> reference(YamlValue value) {
    Optional<YamlGroup> group = value.group(KEYS);
    Optional<Declaration.Named> file =
        group.flatMap(g -> g.required("file", "file: reference.csv")).flatMap(files);
    Optional<YamlValue> smoothing = group.flatMap(g -> g.value("smoothing"));
    Optional<Smoothing> stated = smoothing.flatMap(Setting::smoothing);
    if (file.isEmpty() || (smoothing.isPresent() && stated.isEmpty())) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new Found(
              new ReferenceCurve(
                  file.get().name(),
                  stated,
                  CaptureFile.read(file.get().path(), file.get().name()).response()),
              file.get().path()));
    } catch (UnusableInput e) {
      return value.problems(e.problems());
    }
  }
}
