package org.twinrig.report;

import java.util.List;
import org.twinrig.evidence.ClopperPearson;
import org.twinrig.internal.Numbers;
import org.twinrig.proof.FeatureRow;

/** What a proof of shared features found, one sentence a row. */
public final class FeatureProofWords {
  private FeatureProofWords() {}

  /**
   * The sentences.
   *
   * @param rows what the proof gave
   * @return one per row
   */
  public static List<String> lines(List<FeatureRow> rows) {
    return rows.stream().map(FeatureProofWords::line).toList();
  }

  private static String line(FeatureRow row) {
    return row.units()
        + " units, "
        + row.kind()
        + ", fixtures "
        + row.fixtures().word()
        + ": "
        + row.planted()
            .map(p -> "found near " + Numbers.hertz(p.placeHz()) + " in " + share(p.found()) + "; ")
            .orElse("")
        + "nothing false claimed in "
        + share(row.clean())
        + ".";
  }

  private static String share(ClopperPearson share) {
    return share.hits()
        + " of "
        + Numbers.count(share.trials(), "study", "studies")
        + " ("
        + Numbers.fixed(100 * share.low(), 1)
        + " to "
        + Numbers.fixed(100 * share.high(), 1)
        + " %)";
  }
}
