package org.twinrig.translation;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.band.BandGrid;
import org.twinrig.internal.Checks;
import org.twinrig.response.Anchor;
import org.twinrig.study.Tolerance;

/**
 * All that is needed to re-express old graphs elsewhere, without the captures.
 *
 * @param origin what study it came from
 * @param anchor where the study's captures were pinned, and a graph is before a window looks at it
 * @param grid the bands
 * @param confidence of every interval
 * @param tolerance how far a translated level may be off
 * @param minUnits with fewer units than this a band is unreliable
 * @param kinds one transfer function per kind, each with its marks
 */
public record Translation(
    Origin origin,
    Anchor anchor,
    BandGrid grid,
    double confidence,
    Tolerance tolerance,
    int minUnits,
    List<TransferFunction> kinds) {

  /** The kind the lab writes when it does not know. */
  public static final String UNKNOWN_KIND = "unknown";

  /** Copies the kinds. */
  public Translation {
    Checks.fraction(confidence, "confidence");
    kinds = List.copyOf(kinds);
  }

  /**
   * What study a translation came from.
   *
   * @param title the study's title
   * @param from label of the old fixture
   * @param to label of the new fixture
   * @param anchor where levels were pinned, in words
   * @param fingerprint of the study's inputs
   */
  public record Origin(String title, String from, String to, String anchor, String fingerprint) {}

  /**
   * The transfer function of a kind.
   *
   * @param kind the kind, compared exactly
   * @return its transfer function; nothing when the study has no such kind
   */
  public Optional<TransferFunction> kind(String kind) {
    return kinds.stream().filter(k -> k.kind().equals(kind)).findFirst();
  }

  /**
   * The kinds that a graph of unknown kind is held to be one of: those with enough units.
   *
   * @return possibly none
   */
  public List<TransferFunction> candidatesForUnknown() {
    List<TransferFunction> candidates = new ArrayList<>();
    for (TransferFunction kind : kinds) {
      if (kind.units() >= minUnits) {
        candidates.add(kind);
      }
    }
    return candidates;
  }
}
