package org.twinrig.doubt;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * A claim that the data contradict: one cause, however many files it touches.
 *
 * @param name of the subject: the unit (of a pair {@code A / B}), session or graph; of graphs that
 *     share a cause all of them, joined by {@code ; }; of a study or catalogue the kind, or empty
 *     where it is about all
 * @param fixture empty where it is about both or none
 * @param file empty where it is about no one file
 * @param doubt what is doubted, in the few words by which files name it
 * @param size what was found, with its unit
 * @param limit from where on it is doubted, in the same unit
 * @param likelyCause in a sentence, with size and limit
 * @param changes what changes in the results without what is doubted; empty where that is not
 *     worked out
 * @param remedy what it does and what to do, in a sentence that is the same for all of one cause
 * @param confirmed the lab's answer; empty while the doubt is open
 */
public record Doubt(
    Subject subject,
    String name,
    String fixture,
    String file,
    String doubt,
    String size,
    String limit,
    String likelyCause,
    String changes,
    String remedy,
    String confirmed) {

  private static final int MOST_NAMES = 3;

  /** Stands between the names of a pair. */
  private static final String PAIRED = " / ";

  /** What a doubt is about. */
  public enum Subject {
    CAPTURE,
    UNIT,
    PAIR,
    SESSION,
    STUDY,
    GRAPH,
    CATALOGUE;

    /** The subject as files write it. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  public Doubt {
    if (doubt.isBlank() || likelyCause.isBlank() || remedy.isBlank()) {
      throw new IllegalArgumentException("a doubt says what, why and what to do");
    }
  }

  /** A doubt that the lab has not answered. */
  public static Doubt open(
      Subject subject,
      String name,
      String fixture,
      String doubt,
      Found found,
      String likelyCause,
      String remedy) {
    return new Doubt(
        subject, name, fixture, "", doubt, found.size, found.limit, likelyCause, "", remedy, "");
  }

  /** A doubt about an old graph that the lab has not answered. */
  public static Doubt ofGraph(
      String graph, String file, String doubt, Found found, String likelyCause, String remedy) {
    return new Doubt(
        Subject.GRAPH,
        graph,
        "",
        file,
        doubt,
        found.size,
        found.limit,
        likelyCause,
        "",
        remedy,
        "");
  }

  /** What was found, and the limit it is held against, both with their unit. */
  public record Found(String size, String limit) {}

  /** What changes without what is doubted, and what to do. */
  public String effect() {
    return changes.isEmpty() ? remedy : changes + " " + remedy;
  }

  /** The same doubt, knowing what changes without what is doubted. */
  public Doubt changing(String changes) {
    return new Doubt(
        subject, name, fixture, file, doubt, size, limit, likelyCause, changes, remedy, confirmed);
  }

  /** Whether it is about a unit of this name, alone or as one of a pair. */
  public boolean isAbout(String unit) {
    return (subject == Subject.UNIT || subject == Subject.PAIR)
        && (name.equals(unit) || name.startsWith(unit + PAIRED) || name.endsWith(PAIRED + unit));
  }

  /** Whether the lab has not answered it. */
  public boolean isOpen() {
    return confirmed.isEmpty();
  }

  /** The same doubt with what the lab answers; open where that is empty. */
  public Doubt answered(String reason) {
    return new Doubt(
        subject, name, fixture, file, doubt, size, limit, likelyCause, changes, remedy, reason);
  }

  /** The doubt in sentences: what, why and how much, what to do. */
  public String sentence() {
    String where = fixture.isEmpty() ? "" : ", " + fixture;
    String about = name.isEmpty() ? "" : " (" + shortName() + where + ")";
    return capital(doubt) + about + ": " + likelyCause + " " + effect();
  }

  /** The first names of those that share the cause, and how many more there are. */
  public String shortName() {
    List<String> names = List.of(name.split("; ", -1));
    int more = names.size() - MOST_NAMES;
    return more <= 1
        ? name
        : String.join(", ", names.subList(0, MOST_NAMES)) + " and " + more + " more";
  }

  /**
   * Doubts about single graphs, one for each of their {@link #causes}. What was found and the
   * likely cause are those of the first.
   */
  public static List<Doubt> byCause(List<Doubt> doubts) {
    return causes(doubts).stream().map(Doubt::together).toList();
  }

  /**
   * Doubts by their causes, in the order of their first: those of one subject with the same words,
   * the same remedy and the same answer share it.
   */
  public static List<List<Doubt>> causes(List<Doubt> doubts) {
    Map<List<String>, List<Doubt>> causes = new LinkedHashMap<>();
    doubts.forEach(
        d ->
            causes
                .computeIfAbsent(
                    List.of(d.subject.word(), d.doubt, d.remedy, d.confirmed),
                    k -> new ArrayList<>())
                .add(d));
    return List.copyOf(causes.values());
  }

  private static Doubt together(List<Doubt> cause) {
    Doubt first = cause.get(0);
    return cause.size() == 1
        ? first
        : new Doubt(
            first.subject,
            cause.stream().map(Doubt::name).collect(Collectors.joining("; ")),
            first.fixture,
            "",
            first.doubt,
            first.size,
            first.limit,
            "Of " + first.name + ": " + first.likelyCause,
            first.changes,
            first.remedy,
            first.confirmed);
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
