package org.twinrig.study;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.twinrig.band.FrequencyRange;
import org.twinrig.intake.NearestName;

/**
 * The keys of one group of a YAML file while it is read, each known and there once. Every getter
 * tells what is wrong with its value; {@link #ifSound} then makes the group's value only when
 * nothing was. What a getter gives for a faulty value is never used.
 */
final class YamlGroup {
  private final YamlValue self;
  private final Map<String, YamlValue> values = new LinkedHashMap<>();
  private final Set<String> guessed = new HashSet<>();
  private boolean sound = true;

  /** Refuses unknown and repeated keys; the first of a repeated one stays. */
  YamlGroup(MappingNode mapping, YamlValue self, List<String> known) {
    this.self = self;
    Map<String, Integer> lines = new HashMap<>();
    for (NodeTuple pair : mapping.getValue()) {
      int line = YamlFile.line(pair.getKeyNode().getStartMark());
      String key = pair.getKeyNode() instanceof ScalarNode name ? name.getValue().strip() : "";
      if (key.isEmpty() || (!known.isEmpty() && !known.contains(key))) {
        self.problem(line, unknown(key, self.name()), remedy(key, known));
        NearestName.among(key, known).ifPresent(guessed::add);
      } else if (lines.putIfAbsent(key, line) != null) {
        String what = "`" + key + "` stands in line " + lines.get(key) + " already";
        self.problem(line, what, "keep one of them");
      } else {
        values.put(key, self.child(pair.getValueNode(), key));
      }
    }
  }

  List<String> keys() {
    return List.copyOf(values.keySet());
  }

  Optional<YamlValue> value(String key) {
    return Optional.ofNullable(values.get(key));
  }

  /** Whether a key was refused that seems to be a slip for this one. */
  boolean misspelt(String key) {
    return guessed.contains(key);
  }

  /** A value without which the group is of no use; not missed when a misspelt key was it. */
  <T> Optional<T> required(String key, String example, Function<YamlValue, Optional<T>> as) {
    if (!values.containsKey(key) && !guessed.contains(key)) {
      String where = self.name().isEmpty() ? "" : " in `" + self.name() + "`";
      int line = self.name().isEmpty() ? 0 : self.line();
      String add = "add `" + key + ": " + example + "`";
      self.problem(line, "the key `" + key + "` is missing" + where, add);
    }
    return noted(value(key).flatMap(as));
  }

  String text(String key, String example) {
    return required(key, example, YamlValue::text).orElse("");
  }

  double number(String key, String example, NumberRange range) {
    return required(key, example, v -> v.number(range)).orElse(Double.NaN);
  }

  /** A value that may be left out, which then is the other one. */
  <T> Optional<T> optional(String key, T otherwise, Function<YamlValue, Optional<T>> as) {
    return values.containsKey(key) ? noted(value(key).flatMap(as)) : Optional.of(otherwise);
  }

  double number(String key, double otherwise, NumberRange range) {
    return optional(key, otherwise, v -> v.number(range)).orElse(Double.NaN);
  }

  /** The range between two ends that were read before; refused when they are not in order. */
  Optional<FrequencyRange> range(double fromHz, double toHz) {
    return noted(self.range(fromHz, toHz));
  }

  /** Makes the group's value when no getter refused one. */
  <T> Optional<T> ifSound(Supplier<T> value) {
    return sound ? Optional.of(value.get()) : Optional.empty();
  }

  private <T> Optional<T> noted(Optional<T> read) {
    sound &= read.isPresent();
    return read;
  }

  private static String unknown(String key, String group) {
    String shown = key.isEmpty() ? "a key is no plain word" : "unknown key `" + key + "`";
    return group.isEmpty() ? shown : shown + " in `" + group + "`";
  }

  private static String remedy(String key, List<String> known) {
    if (key.matches("[0-9]+")) {
      return "write a point as the decimal mark, such as 1.5";
    }
    return known.isEmpty()
        ? "write a name and a colon"
        : NearestName.question(key, known) + "known keys here: " + String.join(", ", known);
  }
}
