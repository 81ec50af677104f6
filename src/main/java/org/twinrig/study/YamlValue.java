package org.twinrig.study;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.twinrig.band.FrequencyRange;
import org.twinrig.intake.NearestName;
import org.twinrig.intake.PlainNumber;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;

/**
 * One value of a YAML file, with its dotted name and its line. Every getter that gives nothing has
 * said why in the list of problems.
 */
record YamlValue(Node node, String name, Place place) {
  /** Where problems go, and under which file. */
  record Place(String source, List<Problem> problems) {}

  int line() {
    return YamlFile.line(node.getStartMark());
  }

  boolean isGroup() {
    return node instanceof MappingNode;
  }

  boolean isList() {
    return node instanceof SequenceNode;
  }

  /** The scalar as written; empty for anything else. */
  String word() {
    return node instanceof ScalarNode scalar ? scalar.getValue().strip() : "";
  }

  /** A line of text, taken as written; a number or a truth value is text too. */
  Optional<String> text() {
    return word().isEmpty() ? refuse("write one text after the colon") : Optional.of(word());
  }

  Optional<Double> number(NumberRange range) {
    String remedy = "write " + range.words();
    OptionalDouble number = PlainNumber.decimal(word());
    if (number.isEmpty()) {
      return refuse(PlainNumber.commaRemedy(word()).orElse(remedy));
    }
    if (!isPlain()) {
      return refuse("write the number without quotes");
    }
    return range.holds(number.getAsDouble()) ? Optional.of(number.getAsDouble()) : refuse(remedy);
  }

  Optional<Long> whole(long least, long most, String remedy) {
    OptionalLong number = isPlain() ? PlainNumber.whole(word()) : OptionalLong.empty();
    return number.isPresent() && number.getAsLong() >= least && number.getAsLong() <= most
        ? Optional.of(number.getAsLong())
        : refuse(remedy);
  }

  private boolean isPlain() {
    return node instanceof ScalarNode scalar && scalar.isPlain();
  }

  /** A constant named in lower case. */
  <E extends Enum<E>> Optional<E> choice(Class<E> type) {
    List<E> constants = List.of(type.getEnumConstants());
    List<String> words = constants.stream().map(c -> c.name().toLowerCase(Locale.ROOT)).toList();
    String word = word();
    if (words.contains(word)) {
      return Optional.of(constants.get(words.indexOf(word)));
    }
    String all = words.stream().map(w -> "`" + w + "`").collect(Collectors.joining(", "));
    return refuse(NearestName.question(word, words) + "write one of " + all);
  }

  Optional<List<YamlValue>> list(String remedy) {
    if (!(node instanceof SequenceNode sequence)) {
      return refuse(remedy);
    }
    List<Node> nodes = sequence.getValue();
    return Optional.of(
        IntStream.range(0, nodes.size())
            .mapToObj(i -> new YamlValue(nodes.get(i), name + "[" + (i + 1) + "]", place))
            .toList());
  }

  /** A range of frequencies, written as a list of its two ends. */
  Optional<FrequencyRange> range() {
    String remedy = "write two frequencies in Hz, as in `[100, 10000]`";
    Optional<List<YamlValue>> ends = list(remedy);
    if (ends.isEmpty() || ends.get().size() != 2) {
      return ends.flatMap(
          e -> amiss(" has " + Numbers.count(e.size(), "entry", "entries"), remedy));
    }
    Optional<Double> from = ends.get().get(0).number(NumberRange.HZ);
    Optional<Double> to = ends.get().get(1).number(NumberRange.HZ);
    return range(from.orElse(Double.NaN), to.orElse(Double.NaN));
  }

  /** The range between two ends in Hz, NaN where one was refused already. */
  Optional<FrequencyRange> range(double fromHz, double toHz) {
    if (fromHz >= toHz) {
      return amiss(
          " runs from " + StudyText.flow(fromHz) + " Hz to " + StudyText.flow(toHz) + " Hz",
          "the first frequency must be the lower one");
    }
    return fromHz < toHz ? Optional.of(new FrequencyRange(fromHz, toHz)) : Optional.empty();
  }

  /** A group of keys: those it may have, or none where the lab names them itself. */
  Optional<YamlGroup> group(String... keys) {
    List<String> known = List.of(keys);
    if (!(node instanceof MappingNode mapping)) {
      return known.isEmpty()
          ? refuse("write a group of keys")
          : refuse("write a group of keys: " + String.join(", ", known));
    }
    return Optional.of(new YamlGroup(mapping, this, known));
  }

  YamlValue child(Node child, String key) {
    return new YamlValue(child, name.isEmpty() ? key : name + "." + key, place);
  }

  /** Refuses the value as it stands. */
  <T> Optional<T> refuse(String remedy) {
    return problem(line(), shown(), remedy);
  }

  /** Refuses what the value says: the clause after its name. */
  <T> Optional<T> amiss(String clause, String remedy) {
    return problem(line(), "`" + name + "`" + clause, remedy);
  }

  <T> Optional<T> problem(int line, String what, String remedy) {
    place.problems().add(Problem.fatal(place.source(), line, what, remedy));
    return Optional.empty();
  }

  /** Tells how the value was taken. */
  void note(String what) {
    place.problems().add(Problem.note(place.source(), line(), what));
  }

  /** Adds what was found in a file the value names. */
  <T> Optional<T> problems(List<Problem> found) {
    place.problems().addAll(found);
    return Optional.empty();
  }

  private String shown() {
    String subject = name.isEmpty() ? "the file" : "`" + name + "`";
    if (!(node instanceof ScalarNode)) {
      return subject + (isGroup() ? " is a group of keys" : " is a list");
    }
    return subject + (word().isEmpty() ? " has no value" : " is `" + word() + "`");
  }
}
