package org.twinrig.study;

import java.util.List;
import java.util.Optional;

/** The key {@code publishing} of study.yaml: when a re-expressed graph may be published. */
final class PublishingReader {
  private static final List<String> KEYS = List.of("from_hz", "to_hz", "lost_octaves");

  private PublishingReader() {}

  /** The rule; where a value was refused, the default stands in and the problem is on record. */
  static PublishingRule read(YamlValue value, PublishingRule standard) {
    Optional<YamlGroup> group = value.group(KEYS);
    if (group.isEmpty()) {
      return standard;
    }
    double fromHz = hz(group.get(), "from_hz", standard.compared().fromHz());
    double toHz = hz(group.get(), "to_hz", standard.compared().toHz());
    FrequencyRange compared =
        FrequencyReader.range(value, Optional.of(fromHz), Optional.of(toHz))
            .orElse(standard.compared());
    double lostOctaves =
        group
            .get()
            .value("lost_octaves")
            .flatMap(v -> v.number(NumberRange.OCTAVES))
            .orElse(standard.lostOctaves());
    return new PublishingRule(compared, lostOctaves);
  }

  private static double hz(YamlGroup group, String key, double standard) {
    return group.value(key).flatMap(FrequencyReader::hz).orElse(standard);
  }
}
