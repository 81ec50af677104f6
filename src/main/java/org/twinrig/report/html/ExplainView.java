package org.twinrig.report.html;

import java.util.List;
import java.util.Optional;

/**
 * The page for readers of graphs, as the template sees it.
 *
 * @param study the study's title
 * @param from label of the old fixture
 * @param to label of the new fixture
 * @param measured how many headphones stand behind the page
 * @param inShort what to do, in three sentences
 * @param marks how to read the marks
 * @param map what may be compared where
 * @param difference how the fixtures differ
 * @param example one old graph re-expressed; nothing when no kind has enough headphones
 * @param tableLink the zones as a table to take away, encoded for a link (RFC 2397)
 * @param fingerprint of the study
 */
public record ExplainView(
    String study,
    String from,
    String to,
    String measured,
    String inShort,
    List<Legend.Entry> marks,
    KindMap map,
    Difference difference,
    Optional<Example> example,
    String tableLink,
    String fingerprint) {

  /**
   * What may be compared where.
   *
   * @param title the finding
   * @param axis the frequency axis
   * @param kinds one entry per kind
   * @param reasons why zones are hatched; empty when none is
   */
  public record KindMap(String title, TrustedMarkup axis, List<Kind> kinds, List<String> reasons) {}

  /**
   * One kind.
   *
   * @param name its name
   * @param count how many were measured
   * @param strip its marks
   * @param advice what to do, one sentence each
   */
  public record Kind(String name, String count, TrustedMarkup strip, List<Advice> advice) {}

  /**
   * A piece of advice.
   *
   * @param what to do
   * @param where the rest of the sentence
   */
  public record Advice(String what, String where) {}

  /**
   * How the fixtures differ on average.
   *
   * @param title the finding
   * @param panels one per kind that has enough headphones
   * @param missing kinds that are not drawn, in one sentence; empty when all are
   * @param linedUp where graphs are lined up, in one sentence
   */
  public record Difference(String title, List<Panel> panels, String missing, String linedUp) {}

  /**
   * The mean difference of one kind.
   *
   * @param name its name
   * @param graph the drawing over its marks
   * @param finding what it shows
   */
  public record Panel(String name, TrustedMarkup graph, String finding) {}

  /**
   * One re-expressed graph.
   *
   * @param title the finding
   * @param whose which headphone it shows
   * @param graph the drawing over its marks
   * @param times what the pale band promises
   * @param scale how many dB are as long as a tenfold step in frequency
   */
  public record Example(
      String title, String whose, TrustedMarkup graph, String times, String scale) {}
}
