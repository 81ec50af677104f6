package org.twinrig.study;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.twinrig.intake.NearestName;

/** The key {@code zones} of study.yaml. */
final class ZonesReader {
  private static final List<String> KEYS = List.of("name", "fixture", "from_hz", "to_hz");

  private ZonesReader() {}

  static Optional<List<DeclaredZone>> zones(YamlValue value, Setting.Context so) {
    return value
        .list("write a list of zones, each beginning with `-`, or `[]` for none")
        .map(list -> list.stream().flatMap(each -> zone(each, so.fixtures()).stream()).toList());
  }

  private static Optional<DeclaredZone> zone(YamlValue owner, List<String> fixtures) {
    Optional<YamlGroup> read = owner.group(KEYS);
    if (read.isEmpty()) {
      return Optional.empty();
    }
    YamlGroup group = read.get();
    Optional<String> name =
        group.required("name", "name: canal entrance resonance").flatMap(YamlValue::text);
    Optional<String> fixture =
        group
            .required("fixture", "fixture: " + (fixtures.isEmpty() ? "plate" : fixtures.get(0)))
            .flatMap(v -> v.text().flatMap(text -> known(v, text, fixtures)));
    Optional<Double> from = group.required("from_hz", "from_hz: 8000").flatMap(FrequencyReader::hz);
    Optional<Double> to = group.required("to_hz", "to_hz: 10000").flatMap(FrequencyReader::hz);
    Optional<FrequencyRange> range = FrequencyReader.range(owner, from, to);
    return range.isPresent() && name.isPresent() && fixture.isPresent()
        ? Optional.of(
            new DeclaredZone(name.get(), fixture.get(), range.get().fromHz(), range.get().toHz()))
        : Optional.empty();
  }

  private static Optional<String> known(YamlValue value, String fixture, List<String> fixtures) {
    // A study without fixtures is refused for that.
    if (fixtures.isEmpty() || fixtures.contains(fixture)) {
      return Optional.of(fixture);
    }
    String guess = NearestName.question(fixture, fixtures);
    String all = fixtures.stream().map(f -> "`" + f + "`").collect(Collectors.joining(" and "));
    return value.refuse(guess + "this study's fixtures are " + all);
  }
}
