package org.twinrig.intake;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/**
 * How file names tell what a capture is: text with named parts in braces, for example {@code
 * {kind}/{unit}_{fixture:plate|head}_{side}_{seating}.txt}.
 *
 * <p>A part stands for one or more characters of a name, never for a slash. {@code {side}} takes L,
 * R or M, or the words left, right, mono in any case; {@code {seating}} a whole number from 1 to
 * 9999; {@code {unit}}, {@code {fixture}}, {@code {kind}} and {@code {session}} any text, or one of
 * the texts that follow a colon, separated by bars; {@code {*}} any text, which is ignored. All
 * else stands for itself. A name that can be read in more than one way is not read at all.
 */
public final class NamePattern {
  private static final Pattern BRACES = Pattern.compile("\\{([^{}]*)\\}");
  private static final Map<String, String> SIDES =
      Map.of("l", "L", "left", "L", "r", "R", "right", "R", "m", "M", "mono", "M");

  /** What a name can tell. */
  public enum Part {
    UNIT,
    FIXTURE,
    /** L, R or M. */
    SIDE,
    /** From 1. */
    SEATING,
    /** The unit's. */
    KIND,
    SESSION;

    /** The part as patterns and tables write it: for example {@code unit}. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** One piece of a pattern: a text that stands for itself, a part, or anything. */
  record Token(Optional<Part> part, String text, List<String> choices) {
    boolean isText() {
      return !text.isEmpty();
    }

    /** Whether any text will do, so that only what follows ends it. */
    boolean isOpen() {
      return !isText()
          && choices.isEmpty()
          && part.map(p -> p != Part.SIDE && p != Part.SEATING).orElse(true);
    }

    /** All places in a name where this can end when it begins at one. */
    List<Integer> ends(String name, int at) {
      if (isText()) {
        return name.startsWith(text, at) ? List.of(at + text.length()) : List.of();
      }
      return IntStream.rangeClosed(at + 1, end(name, at))
          .filter(to -> part.isEmpty() || value(name.substring(at, to)).isPresent())
          .boxed()
          .toList();
    }

    /** What a written text means for the part; nothing when the part may not have it. */
    Optional<String> value(String written) {
      if (!choices.isEmpty() && !choices.contains(written)) {
        return Optional.empty();
      }
      return switch (part.orElseThrow()) {
        case SIDE -> Optional.ofNullable(SIDES.get(written.toLowerCase(Locale.ROOT)));
        case SEATING ->
            written.matches("0*[1-9][0-9]{0,3}")
                ? Optional.of(written.replaceFirst("^0+", ""))
                : Optional.empty();
        // A name that begins or ends with a blank would not be found again in a table.
        case UNIT, FIXTURE, KIND, SESSION ->
            written.equals(written.strip()) ? Optional.of(written) : Optional.empty();
      };
    }

    /** Says why a text is none the part may have. */
    String wrong(String written) {
      String subject = part.map(Part::word).orElse("*") + " `" + written + "` ";
      if (!choices.isEmpty() && !choices.contains(written)) {
        return subject + "is not `" + String.join("` or `", choices) + "`";
      }
      return switch (part.orElseThrow()) {
        case SIDE ->
            subject
                + "is not L, R, M, left, right or mono; for other words write `"
                + written
                + "` itself in the place of {side} and give --side, one side after the other";
        case SEATING -> subject + "is not a whole number from 1 to 9999";
        case UNIT, FIXTURE, KIND, SESSION -> subject + "begins or ends with a blank";
      };
    }

    @Override
    public String toString() {
      if (isText()) {
        return text;
      }
      String offered = choices.isEmpty() ? "" : ":" + String.join("|", choices);
      return "{" + part.map(Part::word).orElse("*") + offered + "}";
    }
  }

  private final String text;
  private final List<Token> tokens;

  private NamePattern(String text, List<Token> tokens) {
    this.text = text;
    this.tokens = tokens;
  }

  /**
   * A pattern as the lab writes it.
   *
   * @throws IllegalArgumentException when a part is not known, stands twice, or a brace is left
   *     open; the message says which and what would be right
   */
  public static NamePattern of(String text) {
    List<Token> tokens = new ArrayList<>();
    Set<Part> seen = new LinkedHashSet<>();
    Matcher braces = BRACES.matcher(text);
    int from = 0;
    while (braces.find()) {
      literal(text.substring(from, braces.start()), tokens);
      Token token = part(braces.group(1));
      if (token.part().isPresent() && !seen.add(token.part().get())) {
        throw new IllegalArgumentException(
            "{" + token.part().get().word() + "} stands twice; write {*} where it is repeated");
      }
      tokens.add(token);
      from = braces.end();
    }
    literal(text.substring(from), tokens);
    return new NamePattern(text, tokens);
  }

  private static void literal(String text, List<Token> tokens) {
    if (text.indexOf('{') >= 0 || text.indexOf('}') >= 0) {
      throw new IllegalArgumentException("a brace is not closed in `" + text + "`");
    }
    if (!text.isEmpty()) {
      tokens.add(new Token(Optional.empty(), text.replace('\\', '/'), List.of()));
    }
  }

  private static Token part(String inside) {
    if (inside.equals("*")) {
      return new Token(Optional.empty(), "", List.of());
    }
    int colon = inside.indexOf(':');
    String name = colon < 0 ? inside : inside.substring(0, colon);
    for (Part part : Part.values()) {
      if (part.word().equals(name)) {
        List<String> choices =
            colon < 0 ? List.of() : List.of(inside.substring(colon + 1).split("\\|", -1));
        if (choices.contains("")) {
          throw new IllegalArgumentException("{" + inside + "} offers an empty text");
        }
        return new Token(Optional.of(part), "", choices);
      }
    }
    throw new IllegalArgumentException(
        "{"
            + inside
            + "} is not a part of a name; the parts are {unit}, {fixture}, {side}, {seating}, {kind},"
            + " {session} and {*}");
  }

  /** The parts the pattern names: in any order. */
  public Set<Part> parts() {
    Set<Part> parts = new LinkedHashSet<>();
    tokens.forEach(t -> t.part().ifPresent(parts::add));
    return parts;
  }

  /**
   * All ways to read a name, up to two: none means that it does not fit, two that it is ambiguous.
   *
   * @param name path below the folder, with forward slashes
   * @return what each part would be
   */
  public List<Map<Part, String>> readings(String name) {
    Set<Map<Part, String>> found = new LinkedHashSet<>();
    read(name, 0, 0, new EnumMap<>(Part.class), found);
    return List.copyOf(found);
  }

  /** Where a name that has no reading leaves the pattern. */
  PatternMisfit.Found misfit(String name) {
    return new PatternMisfit(tokens, name).found();
  }

  private void read(
      String name, int at, int token, Map<Part, String> so, Set<Map<Part, String>> found) {
    if (token == tokens.size()) {
      if (at == name.length()) {
        found.add(Map.copyOf(so));
      }
      return;
    }
    Token next = tokens.get(token);
    for (int to : next.ends(name, at)) {
      if (found.size() > 1) {
        return;
      }
      next.part().ifPresent(p -> so.put(p, next.value(name.substring(at, to)).orElseThrow()));
      read(name, to, token + 1, so, found);
      next.part().ifPresent(so::remove);
    }
  }

  /** Where the folder or file name ends that a place lies in: no part reaches over a slash. */
  static int end(String name, int at) {
    int slash = name.indexOf('/', at);
    return slash < 0 ? name.length() : slash;
  }

  @Override
  public String toString() {
    return text;
  }
}
