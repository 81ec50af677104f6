package org.twinrig.translation;

import org.twinrig.reliability.Mark;
import org.twinrig.study.PublishingRule;

/** What the lab should do with a re-expressed graph. */
public enum Decision {
  /** Every band the graph covers is reliable. */
  PUBLISH("publish"),
  /** Usable where its marks allow. */
  PUBLISH_WITH_MARKS("publish with marks"),
  /**
   * Something claimed of the graph is contradicted and not answered, so that what else would be
   * decided rests on it.
   */
  CHECK_FIRST("check first"),
  /** Too much of the range readers compare by is unreliable or missing. */
  RE_MEASURE("re-measure");

  private final String word;

  Decision(String word) {
    this.word = word;
  }

  /** The decision as files write it: for example {@code re-measure}. */
  public String word() {
    return word;
  }

  /** Decides. */
  public static Decision of(TranslatedGraph graph, PublishingRule rule) {
    if (lostOctaves(graph, rule) > rule.lostOctaves()) {
      return RE_MEASURE;
    }
    boolean allReliable = graph.octaves(Mark.CAUTION) == 0 && graph.octaves(Mark.UNRELIABLE) == 0;
    return allReliable ? PUBLISH : PUBLISH_WITH_MARKS;
  }

  /** Octaves unreliable or missing in the range readers compare by. */
  static double lostOctaves(TranslatedGraph graph, PublishingRule rule) {
    return graph.octaves(
        b -> rule.compares(b.band().midHz()) && (b.missing() || b.mark() == Mark.UNRELIABLE));
  }
}
