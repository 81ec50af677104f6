package org.twinrig.workbench;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.twinrig.doubt.Answers;
import org.twinrig.doubt.Doubt;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.Study;

/**
 * Doubts that share words, remedy and answer, so that one reason may answer them all.
 *
 * @param number its place among all causes of one state, by which a form names it
 */
public record Cause(int number, List<Doubt> doubts) {
  /** Of more doubts none is chosen singly: the form would be longer than a page. */
  private static final int MOST_CHOSEN = 30;

  /** All causes, in the order of their first doubts. */
  static List<Cause> of(List<Doubt> doubts) {
    List<List<Doubt>> found = Doubt.causes(doubts);
    return IntStream.range(0, found.size()).mapToObj(k -> new Cause(k, found.get(k))).toList();
  }

  public Doubt first() {
    return doubts.get(0);
  }

  public boolean isOpen() {
    return first().isOpen();
  }

  /** Whether a form asks which of the doubts are meant. */
  public boolean choosable() {
    return isOpen() && doubts.size() > 1 && doubts.size() <= MOST_CHOSEN;
  }

  /** The doubts a form means. */
  List<Doubt> chosen(Request request) throws UnusableInput {
    List<Doubt> chosen =
        IntStream.range(0, doubts.size())
            .filter(k -> !choosable() || request.fields().containsKey("of-" + k))
            .mapToObj(doubts::get)
            .toList();
    if (chosen.isEmpty()) {
      throw UnusableInput.fatal(
          "the form", 0, "no doubt is chosen", "go back and choose those that the reason answers");
    }
    return chosen;
  }

  /** What is doubted, of how many. */
  public String title() {
    String word = first().doubt();
    return word.substring(0, 1).toUpperCase(Locale.ROOT)
        + word.substring(1)
        + ": "
        + Numbers.count(doubts.size(), first().subject().word(), first().subject().word() + "s");
  }

  /** Whether one of them is about a unit, alone or as one of a pair. */
  public boolean isAbout(String unit) {
    return doubts.stream().anyMatch(d -> d.isAbout(unit));
  }

  /** Whether every one of them has a row of the study's tables. */
  public boolean answerable(Study study) {
    return doubts.stream().noneMatch(d -> Answers.rows(study, d).isEmpty());
  }

  /** Of some of them the names. */
  public String names() {
    List<String> names = List.of(names(doubts).split("; ", -1));
    int more = names.size() - MOST_CHOSEN;
    return String.join(", ", more > 0 ? names.subList(0, MOST_CHOSEN) : names)
        + (more > 0 ? " and " + more + " more" : "");
  }

  /** The names of doubts, each once. */
  static String names(List<Doubt> doubts) {
    return doubts.stream()
        .map(d -> d.name().isEmpty() ? d.file() : d.name())
        .distinct()
        .collect(Collectors.joining("; "));
  }
}
