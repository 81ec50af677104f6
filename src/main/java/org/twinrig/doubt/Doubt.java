package org.twinrig.doubt;

import java.util.Locale;

/**
 * A claim that the data contradict: one cause, however many files it touches.
 *
 * @param name of the subject: the unit, session or graph; of a study or catalogue the kind, or
 *     empty where it is about all
 * @param fixture empty where it is about both or none
 * @param file empty where it is about no one file
 * @param doubt what is doubted, in the few words by which files name it
 * @param size what was found, with its unit
 * @param limit from where on it is doubted, in the same unit
 * @param likelyCause in a sentence, with size and limit
 * @param effect what it does to results and what to do, in a sentence
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
    String effect,
    String confirmed) {

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
    if (doubt.isBlank() || likelyCause.isBlank() || effect.isBlank()) {
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
      String effect) {
    return new Doubt(
        subject, name, fixture, "", doubt, found.size, found.limit, likelyCause, effect, "");
  }

  /** What was found, and the limit it is held against, both with their unit. */
  public record Found(String size, String limit) {}

  /** The doubt in sentences: what, why and how much, what to do. */
  public String sentence() {
    String where = fixture.isEmpty() ? "" : ", " + fixture;
    String about = name.isEmpty() ? "" : " (" + name + where + ")";
    return capital(doubt) + about + ": " + likelyCause + " " + effect;
  }

  private static String capital(String text) {
    return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }
}
