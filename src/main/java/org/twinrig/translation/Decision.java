package org.twinrig.translation;

import org.twinrig.reliability.Mark;

/** What the lab should do with a re-expressed graph. */
public enum Decision {
  /** Every band the graph covers is reliable. */
  PUBLISH("publish"),
  /** Usable where its marks allow. */
  PUBLISH_WITH_MARKS("publish with marks"),
  /** Too much of the range readers compare by is unreliable or missing. */
  RE_MEASURE("re-measure");

  private final String word;

  Decision(String word) {
    this.word = word;
  }

  /**
   * The decision as files write it.
   *
   * @return for example {@code re-measure}
   */
  public String word() {
    return word;
  }

  /**
   * How decisions are taken.
   *
   * @param fromHz lower end of the range readers compare by, Hz
   * @param toHz its upper end, Hz
   * @param allowedOctaves more than this many octaves unreliable or missing inside that range call
   *     for a new measurement
   */
  public record Rule(double fromHz, double toHz, double allowedOctaves) {

    /**
     * From 100 Hz to 10 kHz, at most one octave.
     *
     * @return the rule
     */
    public static Rule standard() {
      return new Rule(100, 10_000, 1);
    }

    /**
     * How much of the range readers compare by cannot be used.
     *
     * @param graph a re-expressed graph
     * @return octaves of it that are unreliable or missing
     */
    public double lostOctaves(TranslatedGraph graph) {
      return graph.octaves(
          b ->
              b.band().midHz() >= fromHz
                  && b.band().midHz() <= toHz
                  && (b.missing() || b.mark() == Mark.UNRELIABLE));
    }

    /**
     * Decides.
     *
     * @param graph a re-expressed graph
     * @return what to do with it
     */
    public Decision of(TranslatedGraph graph) {
      if (lostOctaves(graph) > allowedOctaves) {
        return RE_MEASURE;
      }
      boolean allReliable = graph.octaves(Mark.CAUTION) == 0 && graph.octaves(Mark.UNRELIABLE) == 0;
      return allReliable ? PUBLISH : PUBLISH_WITH_MARKS;
    }
  }
}
