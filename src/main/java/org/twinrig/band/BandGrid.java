package org.twinrig.band;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** A run of adjacent bands of one width. Immutable; two grids are equal when their bands are. */
public record BandGrid(List<Band> bands) {

  /** The numbers of bands per octave a study may use. */
  public static final Set<Integer> SUPPORTED_PER_OCTAVE = Set.of(1, 3, 6, 12, 24, 48);

  public BandGrid {
    bands = List.copyOf(bands);
    if (bands.isEmpty()) {
      throw new IllegalArgumentException("a grid needs at least one band");
    }
    for (int i = 1; i < bands.size(); i++) {
      if (bands.get(i).index() != bands.get(i - 1).index() + 1
          || bands.get(i).perOctave() != bands.get(0).perOctave()) {
        throw new IllegalArgumentException("bands of a grid must be adjacent and of one width");
      }
    }
  }

  /**
   * The grid that covers a frequency range: the bands with {@code fromHz·G^(-1/(4N)) <= f_m <=
   * toHz·G^(1/(4N))}. A mid-band frequency up to a quarter of a band outside still belongs, so that
   * nominal ends such as 20 Hz and 20 kHz include their own bands.
   *
   * @throws IllegalArgumentException when the range is empty or holds no mid-band frequency, or the
   *     band width is not one of 1, 3, 6, 12, 24 and 48 per octave
   */
  public static BandGrid covering(double fromHz, double toHz, int perOctave) {
    if (!(0 < fromHz && fromHz < toHz && Double.isFinite(toHz))) {
      throw new IllegalArgumentException(
          "a band range must satisfy 0 < from < to, but is %s Hz to %s Hz".formatted(fromHz, toHz));
    }
    if (!SUPPORTED_PER_OCTAVE.contains(perOctave)) {
      throw new IllegalArgumentException(
          "bands per octave must be 1, 3, 6, 12, 24 or 48, but is " + perOctave);
    }
    List<Band> bands = new ArrayList<>();
    int first = Band.ofMidFrequency(fromHz, perOctave).index() - 1;
    int last = Band.ofMidFrequency(toHz, perOctave).index() + 1;
    for (int index = first; index <= last; index++) {
      Band band = Band.ofIndex(index, perOctave);
      if (holds(band.midHz(), fromHz, toHz, perOctave)) {
        bands.add(band);
      }
    }
    if (bands.isEmpty()) {
      throw new IllegalArgumentException(
          "no mid-band frequency of 1/%s octave lies from %s Hz to %s Hz"
              .formatted(perOctave, fromHz, toHz));
    }
    return new BandGrid(bands);
  }

  /**
   * Whether a mid-band frequency belongs to a range, under the rule of {@link #covering}: it lies
   * in the range widened by a quarter of a band at both ends.
   */
  public static boolean holds(double midHz, double fromHz, double toHz, int perOctave) {
    // One part in 10^12 keeps a nominal end that falls on the bound from depending on rounding.
    double quarter = Math.pow(10, 0.3 / (4.0 * perOctave)) * (1 + 1e-12);
    return midHz >= fromHz / quarter && midHz <= toHz * quarter;
  }

  public int size() {
    return bands.size();
  }

  /** One band, counted from 0. */
  public Band band(int position) {
    return bands.get(position);
  }

  public int perOctave() {
    return bands.get(0).perOctave();
  }

  public double lowerHz() {
    return bands.get(0).lowerHz();
  }

  public double upperHz() {
    return bands.get(bands.size() - 1).upperHz();
  }
}
