package org.twinrig.study;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.twinrig.intake.NearestName;

/** The keys of one group of a YAML file, each known and there once. */
final class YamlGroup {
  private final YamlValue self;
  private final Map<String, YamlValue> values;
  private final Set<String> guessed;

  private YamlGroup(YamlValue self, Map<String, YamlValue> values, Set<String> guessed) {
    this.self = self;
    this.values = values;
    this.guessed = guessed;
  }

  /** Refuses unknown and repeated keys; the first of a repeated one stays. */
  static YamlGroup of(MappingNode mapping, YamlValue self, List<String> known) {
    Map<String, YamlValue> values = new LinkedHashMap<>();
    Map<String, Integer> lines = new LinkedHashMap<>();
    Set<String> guessed = new HashSet<>();
    for (NodeTuple pair : mapping.getValue()) {
      int line = line(pair.getKeyNode());
      String key = key(pair.getKeyNode());
      if (key.isEmpty() || (!known.isEmpty() && !known.contains(key))) {
        self.problem(line, unknown(key, self.name()), remedy(key, known));
        NearestName.among(key, known).ifPresent(guessed::add);
      } else if (lines.containsKey(key)) {
        self.problem(
            line,
            "`" + key + "` stands in line " + lines.get(key) + " already",
            "keep one of them");
      } else {
        lines.put(key, line);
        values.put(key, self.child(pair.getValueNode(), key));
      }
    }
    return new YamlGroup(self, values, guessed);
  }

  List<String> keys() {
    return new ArrayList<>(values.keySet());
  }

  Optional<YamlValue> value(String key) {
    return Optional.ofNullable(values.get(key));
  }

  /** Whether a key was refused that seems to be a slip for this one. */
  boolean misspelt(String key) {
    return guessed.contains(key);
  }

  /** A value without which the group is of no use; not missed when a misspelt key was it. */
  Optional<YamlValue> required(String key, String example) {
    if (!values.containsKey(key) && !guessed.contains(key)) {
      String where = self.name().isEmpty() ? "" : " in `" + self.name() + "`";
      int line = self.name().isEmpty() ? 0 : self.line();
      self.problem(line, "the key `" + key + "` is missing" + where, "add `" + example + "`");
    }
    return value(key);
  }

  private static String unknown(String key, String group) {
    String shown = key.isEmpty() ? "a key is no plain word" : "unknown key `" + key + "`";
    return group.isEmpty() ? shown : shown + " in `" + group + "`";
  }

  private static String remedy(String key, List<String> known) {
    if (key.matches("[0-9]+")) {
      return "write a point as the decimal mark, such as 1.5";
    }
    String guess = NearestName.question(key, known);
    return known.isEmpty()
        ? "write a name and a colon"
        : guess + "known keys here: " + String.join(", ", known);
  }

  private static String key(Node node) {
    return node instanceof ScalarNode scalar ? scalar.getValue().strip() : "";
  }

  private static int line(Node node) {
    return node.getStartMark().map(Mark::getLine).orElse(-1) + 1;
  }
}
