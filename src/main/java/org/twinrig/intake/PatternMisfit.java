package org.twinrig.intake;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Where a name leaves a pattern that it does not fit: the first part that nothing fits. */
final class PatternMisfit {
  private final List<NamePattern.Token> tokens;
  private final String name;
  private final Map<List<Integer>, Integer> farthest = new HashMap<>();

  /** Of a name that has no reading. */
  PatternMisfit(List<NamePattern.Token> tokens, String name) {
    this.tokens = tokens;
    this.name = name;
  }

  /**
   * What is wrong with one name.
   *
   * @param part the place in the pattern that fails, from 0
   * @param certain whether the rest of the name would fit if only this value were right
   * @param value the text that is not allowed; nothing when a text of the pattern is missing
   * @param told in words
   */
  record Found(String name, int part, boolean certain, Optional<String> value, String told) {
    /** Names with the same fault are told of together. */
    String sort() {
      return part + (certain ? " certain " : " ") + value.isPresent();
    }
  }

  /** A text that stands where a part should: from where to where, and how well the rest fits. */
  private record Candidate(int from, int to, int reached) {}

  Found found() {
    NavigableSet<Integer> before = new TreeSet<>();
    NavigableSet<Integer> at = new TreeSet<>(List.of(0));
    int part = 0;
    for (; part < tokens.size(); part++) {
      NavigableSet<Integer> next = after(part, at);
      if (next.isEmpty()) {
        break;
      }
      before = at;
      at = next;
    }
    if (part < tokens.size() && !tokens.get(part).isText()) {
      return wrongPart(part, at);
    }
    boolean open = 0 < part && part < tokens.size() && tokens.get(part - 1).isOpen();
    return open ? unended(part, before.first()) : missing(part, at.last());
  }

  /** All places a part can end at, when it begins at one of several. */
  private NavigableSet<Integer> after(int part, Set<Integer> from) {
    NavigableSet<Integer> after = new TreeSet<>();
    from.forEach(at -> after.addAll(tokens.get(part).ends(name, at)));
    return after;
  }

  /** How many parts from the first on can be fitted in turn; one more when the name ends there. */
  private int reached(int part, int at) {
    if (part == tokens.size()) {
      return at == name.length() ? part + 1 : part;
    }
    List<Integer> place = List.of(part, at);
    if (farthest.containsKey(place)) {
      return farthest.get(place);
    }
    int most = part;
    for (int next : tokens.get(part).ends(name, at)) {
      most = Math.max(most, reached(part + 1, next));
    }
    farthest.put(place, most);
    return most;
  }

  private Found wrongPart(int part, NavigableSet<Integer> at) {
    NamePattern.Token token = tokens.get(part);
    if (at.stream().allMatch(from -> NamePattern.end(name, from) == from)) {
      return found(part, lead(part, at.first(), "but nothing is left for ") + token);
    }
    Candidate best = candidate(part, at);
    String value = name.substring(best.from(), best.to());
    return new Found(
        name,
        part,
        best.reached() > tokens.size(),
        Optional.of(value),
        lead(part, best.from(), "but ") + token.wrong(value));
  }

  /** The text with which the pattern could go on best, were it allowed here. */
  private Candidate candidate(int part, NavigableSet<Integer> at) {
    Optional<Candidate> best =
        at.stream()
            .flatMap(
                from ->
                    IntStream.rangeClosed(from + 1, NamePattern.end(name, from))
                        .mapToObj(to -> new Candidate(from, to, reached(part + 1, to))))
            .min(
                Comparator.<Candidate>comparingInt(c -> -c.reached())
                    .thenComparingInt(c -> c.to() - c.from()));
    if (best.isPresent() && best.get().reached() > part + 1) {
      return best.get();
    }
    int from = at.stream().filter(a -> NamePattern.end(name, a) > a).findFirst().orElseThrow();
    return new Candidate(from, NamePattern.end(name, from), part);
  }

  /** A part that takes any text, and the text that should end it is not there. */
  private Found unended(int part, int from) {
    NamePattern.Token open = tokens.get(part - 1);
    String text = tokens.get(part).text();
    int next = name.indexOf(text, from + 1);
    if (next > 0 && next <= NamePattern.end(name, from)) {
      String value = name.substring(from, next);
      String told = lead(part - 1, from, "but ") + open.wrong(value);
      return new Found(name, part, false, Optional.of(value), told);
    }
    return found(part, lead(part - 1, from, "but ") + unended(open, text, from));
  }

  private String unended(NamePattern.Token open, String text, int from) {
    String rest = name.substring(from, NamePattern.end(name, from));
    if (rest.startsWith(text)) {
      return "`" + rest + "` leaves nothing for " + open + " before `" + text + "`";
    }
    String lacks = rest.equals(name) ? "there is no" : "`" + rest + "` has no";
    String why = rest.length() + from < name.length() ? ", and no part reaches over a slash" : "";
    return lacks + " `" + text + "` to end " + open + why;
  }

  private Found found(int part, String told) {
    return new Found(name, part, false, Optional.empty(), told);
  }

  private Found missing(int part, int at) {
    String rest = name.substring(at);
    String why;
    if (part == tokens.size()) {
      why = "the pattern ends where the name goes on with `" + rest + "`";
    } else {
      String text = "`" + tokens.get(part).text() + "`";
      why =
          rest.isEmpty()
              ? "the name ends where " + text + " should follow"
              : at == 0
                  ? "the name does not begin with " + text
                  : "then " + text + " should follow, not `" + rest + "`";
    }
    return found(part, lead(part, at, "but ") + why);
  }

  private String lead(int part, int at, String turn) {
    String fitting =
        tokens.subList(0, part).stream()
            .map(NamePattern.Token::toString)
            .collect(Collectors.joining());
    return at == 0
        ? turn.replaceFirst("^but ", "")
        : "`%s` fits `%s`, %s".formatted(name.substring(0, at), fitting, turn);
  }
}
