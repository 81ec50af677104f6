package org.twinrig.reliability;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.twinrig.band.Band;
import org.twinrig.regression.BandOutcome;

class ZoneTest {

  @Test
  void adjacentBandsWithOneMarkAreOneZone() {
    assertEquals("RRR UUU", marks(Zone.of(bands("RRRUUU"))));
  }

  @Test
  void aNarrowRunJoinsTheWorseNeighbour() {
    assertEquals("RRR UUUUU", marks(Zone.of(bands("RRRCUUUU"))));
    assertEquals("CCCCC", marks(Zone.of(bands("CCRCC"))));
    assertEquals("UUUUUU", marks(Zone.of(bands("UURCUU"))));
  }

  @Test
  void aNarrowRunWorseThanBothNeighboursStands() {
    assertEquals("RRR U RRR", marks(Zone.of(bands("RRRURRR"))));
  }

  @Test
  void oneSixthOfAnOctaveIsNotNarrow() {
    assertEquals("RR CC RR", marks(Zone.of(bands("RRCCRR"))));
  }

  @Test
  void bandsWithoutDataAreTheirOwnZone() {
    List<Zone> zones = Zone.of(bands("RR-UU"));
    assertEquals(3, zones.size());
    assertEquals(List.of(Reason.NO_DATA), zones.get(1).reasons());
  }

  @Test
  void zonesCoverTheBandsWithoutGaps() {
    List<MarkedBand> bands = bands("RCURRCCUUURC");
    List<Zone> zones = Zone.of(bands);
    assertEquals(bands.get(0).band().lowerHz(), zones.get(0).fromHz());
    assertEquals(bands.get(11).band().upperHz(), zones.get(zones.size() - 1).toHz());
    for (int z = 1; z < zones.size(); z++) {
      assertEquals(zones.get(z - 1).toHz(), zones.get(z).fromHz());
    }
  }

  @Test
  void aMarkAndItsReasonsMustAgree() {
    BandOutcome none = new BandOutcome.NotFitted(Band.ofIndex(0, 12), 0, BandOutcome.Why.NO_DATA);
    assertThrows(
        IllegalArgumentException.class, () -> new MarkedBand(none, Mark.CAUTION, List.of()));
    assertThrows(
        IllegalArgumentException.class,
        () -> new MarkedBand(none, Mark.RELIABLE, List.of(Reason.FEW_UNITS)));
  }

  private static List<MarkedBand> bands(String marks) {
    List<MarkedBand> bands = new ArrayList<>();
    for (int k = 0; k < marks.length(); k++) {
      BandOutcome outcome =
          new BandOutcome.NotFitted(Band.ofIndex(k, 12), 9, BandOutcome.Why.NO_DATA);
      bands.add(
          switch (marks.charAt(k)) {
            case 'R' -> new MarkedBand(outcome, Mark.RELIABLE, List.of());
            case 'C' -> new MarkedBand(outcome, Mark.CAUTION, List.of(Reason.WIDE_PREDICTION));
            case 'U' -> new MarkedBand(outcome, Mark.UNRELIABLE, List.of(Reason.UNITS_DISAGREE));
            default -> new MarkedBand(outcome, Mark.UNRELIABLE, List.of(Reason.NO_DATA));
          });
    }
    return bands;
  }

  private static String marks(List<Zone> zones) {
    List<String> words = new ArrayList<>();
    for (Zone zone : zones) {
      int bands = (int) Math.round(zone.octaves() * 12 / (0.3 / Math.log10(2)));
      words.add(zone.mark().name().substring(0, 1).repeat(bands));
    }
    return String.join(" ", words);
  }
}
