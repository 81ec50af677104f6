package org.twinrig.proof;

import java.util.Optional;
import org.twinrig.evidence.ClopperPearson;
import org.twinrig.simulation.FixturePair;

/**
 * What many studies of one kind found on one pair of fixtures. All shares are shares of studies,
 * which are independent of each other.
 *
 * @param units of the kind in each study
 * @param fixtures what they were measured on
 * @param kind the kind
 * @param clean studies that claimed nothing false: no feature against the sign of the true mean
 *     transfer minus its own octave, and none at all where that is 0
 * @param claimsPerStudy mean number of features of the mean transfer
 * @param planted what became of the planted feature; nothing where none was planted
 */
public record FeatureRow(
    int units,
    FixturePair fixtures,
    String kind,
    ClopperPearson clean,
    double claimsPerStudy,
    Optional<Planted> planted) {

  /**
   * What became of a planted feature.
   *
   * @param placeHz where the true mean transfer, minus its own octave, has its peak
   * @param heightDb how high it stands there
   * @param found studies that claim a peak within 1/12 octave of the place
   * @param centreHeld of the studies that found it, those whose interval of the centre holds the
   *     place; nothing when none found it
   * @param heightHeld likewise those whose interval of the height holds the true height
   */
  public record Planted(
      double placeHz,
      double heightDb,
      ClopperPearson found,
      Optional<ClopperPearson> centreHeld,
      Optional<ClopperPearson> heightHeld) {}
}
