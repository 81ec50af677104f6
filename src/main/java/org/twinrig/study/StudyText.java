package org.twinrig.study;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.CollectionNode;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * The text of a study.yaml that {@link StudyReader} can read, in which single values are written
 * anew: everything else stays as it stands, with its comments and its order. Whether the new values
 * make sense is for the reader to say.
 */
public record StudyText(String text) {
  /** A scalar that YAML reads as it is written, wherever it stands. */
  private static final Pattern PLAIN =
      Pattern.compile("(?!- )[\\p{L}\\p{N}+.-][\\p{L}\\p{N} ._/+-]*");

  private static final Pattern CONTROL = Pattern.compile("[\\x00-\\x1f]");

  /**
   * A value on one line, as {@link #with} takes it; nothing when the text does not name the key:
   * one of the whole file, or {@code group.key}.
   */
  public Optional<String> value(String key) {
    Optional<Node> node = compose(text);
    for (String part : key.split("[.]", 2)) {
      node = node.flatMap(group -> entry(group, part)).map(NodeTuple::getValueNode);
    }
    return node.map(StudyText::flow);
  }

  /**
   * The text with one value written anew, or added when it does not name the key.
   *
   * @param key of the whole file, or {@code group.key} for a key of a group
   * @param value a word, a number, or a group or list between brackets; a value that YAML would
   *     read as something else than one value is written as a text between quotes
   */
  public StudyText with(String key, String value) {
    return put(key, alone(value.strip()));
  }

  /** The text with a list written anew, one item on a line, each as {@link #flow} writes it. */
  public StudyText withList(String key, List<String> items) {
    String list =
        items.isEmpty()
            ? "[]"
            : items.stream().collect(Collectors.joining(",\n  ", "[\n  ", "\n  ]"));
    return put(key, list);
  }

  /**
   * A value on one line: a number, a text, or a list or map of such, for example <code>
   * { at_hz: 1000 }</code>; nothing for null.
   */
  public static String flow(Object value) {
    if (value == null) {
      return "";
    }
    if (value instanceof Map<?, ?> group) {
      return group.entrySet().stream()
          .map(e -> flow(e.getKey()) + ": " + flow(e.getValue()))
          .collect(Collectors.joining(", ", "{ ", " }"));
    }
    if (value instanceof List<?> list) {
      return list.stream().map(StudyText::flow).collect(Collectors.joining(", ", "[", "]"));
    }
    return value instanceof Double number
        ? BigDecimal.valueOf(number).stripTrailingZeros().toPlainString()
        : scalar(value.toString().strip());
  }

  private StudyText put(String key, String value) {
    String[] path = key.split("[.]", 2);
    Node root =
        compose(text)
            .filter(MappingNode.class::isInstance)
            .orElseThrow(() -> new IllegalArgumentException("a study.yaml is a group of keys"));
    Optional<NodeTuple> owner = entry(root, path[0]);
    if (path.length == 1) {
      return owner.map(e -> replaced(e, value)).orElseGet(() -> added(key + ": " + value));
    }
    String inner = path[1] + ": " + value;
    if (owner.isEmpty()) {
      return added(path[0] + ": { " + inner + " }");
    }
    return owner.get().getValueNode() instanceof MappingNode group
        ? entry(group, path[1])
            .map(e -> replaced(e, value))
            .orElseGet(() -> insertedInto(group, inner))
        : replaced(owner.get(), "{ " + inner + " }");
  }

  private static Optional<NodeTuple> entry(Node node, String key) {
    return node instanceof MappingNode group
        ? group.getValue().stream()
            .filter(t -> t.getKeyNode() instanceof ScalarNode k && k.getValue().equals(key))
            .findFirst()
        : Optional.empty();
  }

  /** Writes a value in place of another; a comment between key and value stays. */
  private StudyText replaced(NodeTuple entry, String value) {
    Node old = entry.getValueNode();
    int keyEnd = text.indexOf(':', at(entry.getKeyNode().getEndMark()));
    int from = Math.max(keyEnd + 1, at(old.getStartMark()));
    String gap = text.substring(keyEnd + 1, from);
    String before = gap.isEmpty() ? " " : gap;
    if (isBlock(old)) {
      before = gap.contains("#") ? gap.substring(0, gap.lastIndexOf('\n') + 1) + "  " : " ";
    }
    return new StudyText(text.substring(0, keyEnd + 1) + before + value + text.substring(end(old)));
  }

  private StudyText insertedInto(MappingNode group, String entry) {
    if (group.getValue().isEmpty()) {
      return inserted(end(group) - 1, " " + entry);
    }
    int end = end(last(group));
    if (!isBlock(group)) {
      return inserted(end, ", " + entry);
    }
    int column = group.getStartMark().map(Mark::getColumn).orElse(2);
    int line = text.indexOf('\n', end);
    return inserted(line < 0 ? text.length() : line, "\n" + " ".repeat(column) + entry);
  }

  private StudyText inserted(int at, String what) {
    return new StudyText(text.substring(0, at) + what + text.substring(at));
  }

  private StudyText added(String line) {
    String end = text.isEmpty() || text.endsWith("\n") ? "" : "\n";
    return new StudyText(text + end + line + "\n");
  }

  /** Where a value ends, without the blank lines and comments that YAML counts with a block. */
  private int end(Node node) {
    return isBlock(node) ? end(last(node)) : at(node.getEndMark());
  }

  private static boolean isBlock(Node node) {
    return node instanceof CollectionNode<?> c && c.getFlowStyle() == FlowStyle.BLOCK;
  }

  private static Node last(Node node) {
    List<?> items = ((CollectionNode<?>) node).getValue();
    Object last = items.get(items.size() - 1);
    return last instanceof NodeTuple pair ? pair.getValueNode() : (Node) last;
  }

  private int at(Optional<Mark> mark) {
    return text.offsetByCodePoints(0, mark.map(Mark::getIndex).orElse(0));
  }

  /** A value that is one value by itself, or a text between quotes that says the same. */
  private static String alone(String value) {
    boolean bracketed = value.startsWith("{") || value.startsWith("[");
    Optional<Node> node = bracketed ? compose(value) : Optional.empty();
    return node.filter(CollectionNode.class::isInstance)
        .map(StudyText::flow)
        .orElseGet(() -> scalar(value));
  }

  private static Optional<Node> compose(String text) {
    try {
      return new Compose(LoadSettings.builder().build()).composeString(text);
    } catch (YamlEngineException e) {
      return Optional.empty(); // the caller then takes it for a text, and the reader refuses that
    }
  }

  private static String flow(Node node) {
    if (node instanceof MappingNode m) {
      return m.getValue().stream()
          .map(t -> flow(t.getKeyNode()) + ": " + flow(t.getValueNode()))
          .collect(Collectors.joining(", ", "{ ", " }"));
    }
    if (node instanceof SequenceNode s) {
      return s.getValue().stream().map(StudyText::flow).collect(Collectors.joining(", ", "[", "]"));
    }
    ScalarNode scalar = (ScalarNode) node;
    return scalar.getScalarStyle() == ScalarStyle.PLAIN
        ? scalar(scalar.getValue())
        : quoted(scalar.getValue());
  }

  private static String scalar(String value) {
    return value.isEmpty() || PLAIN.matcher(value).matches() ? value : quoted(value);
  }

  private static String quoted(String value) {
    String escaped = value.replace("\\", "\\\\").replace("\"", "\\\"");
    return CONTROL
        .matcher(escaped)
        .replaceAll(c -> String.format(Locale.ROOT, "\\\\x%02x", (int) c.group().charAt(0)))
        .transform(text -> '"' + text + '"');
  }
}
