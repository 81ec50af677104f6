package org.twinrig.study;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.DoublePredicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;
import org.twinrig.intake.NearestName;
import org.twinrig.intake.PlainNumber;
import org.twinrig.problem.Problem;

/**
 * One value of a YAML file, with its dotted name and its line. Every getter that gives nothing has
 * said why in the list of problems.
 */
final class YamlValue {
  private final Node node;
  private final String name;
  private final Place place;

  /** Where problems go, and under which file. */
  record Place(String source, List<Problem> problems) {}

  YamlValue(Node node, String name, Place place) {
    this.node = node;
    this.name = name;
    this.place = place;
  }

  int line() {
    return node.getStartMark().map(Mark::getLine).orElse(-1) + 1;
  }

  String name() {
    return name;
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
    if (!(node instanceof ScalarNode scalar) || scalar.getValue().isBlank()) {
      return refuse("write one text after the colon");
    }
    return Optional.of(scalar.getValue().strip());
  }

  Optional<Double> number(NumberRange range) {
    return number(range::holds, "write " + range.words());
  }

  Optional<Double> number(DoublePredicate fits, String remedy) {
    if (!(node instanceof ScalarNode scalar) || scalar.getValue().isBlank()) {
      return refuse(remedy);
    }
    OptionalDouble number = PlainNumber.decimal(scalar.getValue());
    if (number.isEmpty()) {
      return refuse(PlainNumber.commaRemedy(scalar.getValue()).orElse(remedy));
    }
    if (!scalar.isPlain()) {
      return refuse("write the number without quotes");
    }
    return fits.test(number.getAsDouble()) ? Optional.of(number.getAsDouble()) : refuse(remedy);
  }

  Optional<Long> whole(long least, long most, String remedy) {
    if (!(node instanceof ScalarNode scalar) || !scalar.isPlain()) {
      return refuse(remedy);
    }
    OptionalLong number = PlainNumber.whole(scalar.getValue());
    return number.isPresent() && number.getAsLong() >= least && number.getAsLong() <= most
        ? Optional.of(number.getAsLong())
        : refuse(remedy);
  }

  /** A constant named in lower case. */
  <E extends Enum<E>> Optional<E> choice(Class<E> type) {
    List<E> constants = List.of(type.getEnumConstants());
    List<String> words = constants.stream().map(c -> c.name().toLowerCase(Locale.ROOT)).toList();
    String word = word();
    if (words.contains(word)) {
      return Optional.of(constants.get(words.indexOf(word)));
    }
    String guess = NearestName.question(word, words);
    String all = words.stream().map(w -> "`" + w + "`").collect(Collectors.joining(", "));
    return refuse(guess + "write one of " + all);
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

  /**
   * A group of keys.
   *
   * @param known the keys it may have; empty when the lab names them itself
   */
  Optional<YamlGroup> group(List<String> known) {
    if (!(node instanceof MappingNode mapping)) {
      return known.isEmpty()
          ? refuse("write a group of keys")
          : refuse("write a group of keys: " + String.join(", ", known));
    }
    return Optional.of(YamlGroup.of(mapping, this, known));
  }

  YamlValue child(Node child, String key) {
    return new YamlValue(child, name.isEmpty() ? key : name + "." + key, place);
  }

  /** Refuses the value as it stands. */
  <T> Optional<T> refuse(String remedy) {
    return problem(line(), shown(), remedy);
  }

  <T> Optional<T> problem(int line, String what, String remedy) {
    place.problems().add(Problem.fatal(place.source(), line, what, remedy));
    return Optional.empty();
  }

  /** Adds what was found in a file the value names. */
  <T> Optional<T> problems(List<Problem> found) {
    place.problems().addAll(found);
    return Optional.empty();
  }

  private String shown() {
    String subject = name.isEmpty() ? "the file" : "`" + name + "`";
    if (isGroup()) {
      return subject + " is a group of keys";
    }
    if (!(node instanceof ScalarNode scalar)) {
      return subject + " is a list";
    }
    if (scalar.getValue().isBlank()) {
      return subject + " has no value";
    }
    return subject + " is `" + scalar.getValue().strip() + "`";
  }
}
