package org.twinrig.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.capture.Fixture;
import org.twinrig.intake.NearestName;

/** The keys {@code fixtures}, {@code from} and {@code to} of study.yaml. */
final class FixturesReader {
  private static final List<String> KEYS = List.of("label", "ear_simulator", "specified_hz");

  private FixturesReader() {}

  /** The names of all fixtures declared and, when they were found, the two of the study. */
  record Declared(List<String> names, Optional<Fixture> from, Optional<Fixture> to) {

    /** The names a zone may belong to; all of them when the two of the study are not known. */
    List<String> ofStudy() {
      return from.isPresent() && to.isPresent()
          ? List.of(from.get().name(), to.get().name())
          : names;
    }
  }

  static Declared read(YamlGroup root) {
    Optional<YamlValue> value =
        root.required(
            "fixtures", "fixtures: { plate: { label: …, specified_hz: [100, 10000] }, head: … }");
    Optional<YamlGroup> group = value.flatMap(v -> v.group(List.of()));
    List<String> names = group.map(YamlGroup::keys).orElse(List.of());
    List<Fixture> all = new ArrayList<>();
    for (String name : names) {
      group.flatMap(g -> g.value(name)).flatMap(v -> fixture(name, v)).ifPresent(all::add);
    }
    Optional<YamlValue> from = root.required("from", "from: plate");
    Optional<YamlValue> to = root.required("to", "to: head");
    boolean known = group.isPresent();
    Optional<String> fromName = from.flatMap(v -> name(v, names, known));
    Optional<String> toName = to.flatMap(v -> name(v, names, known));
    if (fromName.isPresent() && fromName.equals(toName)) {
      to.get()
          .refuse("name two different fixtures, because `from` is `" + fromName.get() + "` too");
    }
    return new Declared(
        names, fromName.flatMap(n -> find(all, n)), toName.flatMap(n -> find(all, n)));
  }

  private static Optional<Fixture> find(List<Fixture> all, String name) {
    return all.stream().filter(f -> f.name().equals(name)).findFirst();
  }

  private static Optional<String> name(YamlValue value, List<String> names, boolean known) {
    Optional<String> name = value.text();
    if (name.isEmpty() || !known || names.contains(name.get())) {
      return name;
    }
    String guess = NearestName.question(name.get(), names);
    return value.refuse(guess + "fixtures declared here: " + String.join(", ", names));
  }

  private static Optional<Fixture> fixture(String name, YamlValue value) {
    Optional<YamlGroup> group = value.group(KEYS);
    if (group.isEmpty()) {
      return Optional.empty();
    }
    Optional<String> label =
        group.get().required("label", "label: Flat-plate ear simulator").flatMap(YamlValue::text);
    Optional<YamlValue> standard = group.get().value("ear_simulator");
    Optional<String> earSimulator = standard.isPresent() ? standard.get().text() : Optional.of("");
    Optional<FrequencyRange> specified =
        group
            .get()
            .required("specified_hz", "specified_hz: [100, 10000]")
            .flatMap(FrequencyReader::pair);
    return label.isPresent() && earSimulator.isPresent() && specified.isPresent()
        ? Optional.of(
            new Fixture(
                name,
                label.get(),
                earSimulator.get(),
                specified.get().fromHz(),
                specified.get().toHz()))
        : Optional.empty();
  }
}
