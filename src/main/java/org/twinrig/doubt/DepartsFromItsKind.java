package org.twinrig.doubt;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.internal.Numbers;
import org.twinrig.study.PairedUnits;

/**
 * Whether a unit's difference between the fixtures departs from that of the other units of its
 * kind: other pads or tips on one of the fixtures, a fault, another kind.
 *
 * <p>Asked of two curves of every unit ({@link DepartureCurves}): the difference averaged over a
 * third of an octave, and the same less what lies half an octave to an octave to either side. The
 * second tells a peak or dip from what units differ by over octaves, such as a leak. A unit is
 * doubted where it departs on either, somewhere, by more than {@link #limit} standard deviations of
 * the others: one number for both curves, the whole range and all units of a kind.
 *
 * <p>The limit was set so that 1 % of kinds without a fault have a unit doubted, by 500 studies
 * each of the impedance simulator on four pairs of heads and of the curve simulator with other
 * kinds (three kinds; 5 to 20 units; 1, 2, 3 and 5 seatings); that of units seated once was raised
 * by one afterwards, on further such studies, for all checks of units together. It is set by
 * simulation and not by theory because differences are not normal: leaks skew the bass, and
 * resonances that move have long tails. In a laboratory whose units differ with longer tails it
 * accuses more. It is our choice.
 *
 * <p>It cannot find: what is much narrower than a third of an octave and not large; what all units
 * of a kind share; two units with the same fault, for each hides the other; a departure within the
 * range of the anchor by its level there. Five units are the fewest to be judged.
 */
public final class DepartsFromItsKind {
  /** The doubt as files name it. */
  public static final String DOUBT = "departs from its kind";

  /** Where it is said what would be found: in the bass, the middle and the treble. */
  public static final List<Double> SAID_HZ = List.of(100.0, 2000.0, 8000.0);

  /** With fewer a limit would ask for more than some ten standard deviations. */
  private static final int FEWEST_UNITS = 5;

  /** By so much a departure must exceed the limit to be found in 7 of 10 studies; simulated. */
  private static final double SEVEN_IN_TEN = 0.7;

  private final PairedUnits paired;
  private final int[] judged;
  private final DepartureCurves level;
  private final DepartureCurves contrast;
  private final double limit;
  private final List<Departure> departures;

  /**
   * A unit that departs from its kind.
   *
   * @param againstSides whether less what lies to either side
   * @param bandHz mid-band frequency in Hz where it departs most
   * @param departureDb its difference there less the mean of the other units', dB
   * @param value without sign, in standard deviations of the other units
   * @param limit that it exceeds
   */
  public record Departure(
      String unit,
      int others,
      boolean againstSides,
      double bandHz,
      double departureDb,
      double value,
      double limit) {

    Doubt doubt() {
      String found = Numbers.against(value, limit, 1);
      String most = Numbers.fixed(limit, 1);
      return Doubt.open(
          Doubt.Subject.UNIT,
          unit,
          "",
          DOUBT,
          new Doubt.Found(found + " standard deviations", most + " standard deviations"),
          ("near %s its difference between the fixtures%s lies %s dB %s the mean of the other %s units,"
                  + " %s standard deviations (doubted from %s on): other pads or tips on one"
                  + " fixture, or a fault.")
              .formatted(
                  Numbers.hertz(bandHz),
                  againstSides ? ", against an octave to either side," : "",
                  Numbers.fixed(Math.abs(departureDb), 1),
                  departureDb > 0 ? "above" : "below",
                  others,
                  found,
                  most),
          "It moves the kind's mean and widens its intervals. Compare its pads or tips on both"
              + " fixtures and capture it again, or leave it out (`exclude`); if it is as it should be, confirm it.");
    }
  }

  private DepartsFromItsKind(PairedUnits paired) {
    this.paired = paired;
    int units = paired.units().size();
    int[] measured =
        units < FEWEST_UNITS
            ? new int[0]
            : IntStream.range(0, paired.grid().size())
                .filter(b -> paired.at(b).size() >= Math.max(FEWEST_UNITS, 0.9 * units))
                .toArray();
    double seatings = seatings(measured);
    limit = units < FEWEST_UNITS ? 0 : limit(units, seatings);
    level = new DepartureCurves(paired, measured, seatings > 1, false);
    contrast = new DepartureCurves(paired, measured, seatings > 1, true);
    judged = level.judged();
    departures = IntStream.range(0, units).boxed().flatMap(i -> largest(i).stream()).toList();
  }

  /** Judges the units of a kind. */
  public static DepartsFromItsKind of(PairedUnits paired) {
    return new DepartsFromItsKind(paired);
  }

  /**
   * How many standard deviations a unit may depart by.
   *
   * @param units five or more
   * @param seatings of a unit on a fixture; 1 where their scatter is not known
   */
  static double limit(int units, double seatings) {
    return seatings < 2
        ? 8.6 + 10.0 / (units - 3)
        : 6.0 + 2.3 / (units - 3) + 1.2 / (seatings * seatings);
  }

  /** Harmonic mean of the units' seatings, on the fixture and at the band where it is least. */
  private double seatings(int[] measured) {
    return IntStream.of(measured)
        .mapToObj(paired::at)
        .mapToDouble(s -> Math.min(s.from().harmonicMean(), s.to().harmonicMean()))
        .min()
        .orElse(1);
  }

  private Optional<Departure> largest(int unit) {
    return Stream.of(level, contrast)
        .flatMap(curves -> curves.largest(unit).stream().map(p -> departure(unit, p, curves)))
        .filter(d -> d.value > limit)
        .max(Comparator.comparingDouble(Departure::value));
  }

  private Departure departure(int unit, DepartureCurves.Place place, DepartureCurves curves) {
    return new Departure(
        paired.units().get(unit),
        place.others(),
        curves == contrast,
        midHz(place.band()),
        place.departureDb(),
        place.value(),
        limit);
  }

  /** The kind: its name. */
  public String kind() {
    return paired.kind();
  }

  /** The units that depart, in the order of the study's table. */
  public List<Departure> departures() {
    return List.copyOf(departures);
  }

  /** A doubt for every unit that departs. */
  public List<Doubt> doubts() {
    return departures.stream().map(Departure::doubt).toList();
  }

  /**
   * What it means that none is doubted, in a sentence: the size of a departure that would be found
   * in 7 of 10 such studies, by the spread and number of these units and their seatings.
   */
  public String noneDoubted() {
    String units = Numbers.count(paired.units().size(), "unit", "units");
    if (judged.length == 0) {
      return "with %s it cannot be judged whether one departs from the others: that takes %s"
          .formatted(
              units,
              paired.units().size() < FEWEST_UNITS
                  ? FEWEST_UNITS
                  : "bands at which nine of ten have a level");
    }
    List<Double> places = SAID_HZ.stream().filter(this::reaches).toList();
    List<Double> said = places.isEmpty() ? List.of(midHz(judged[judged.length / 2])) : places;
    return ("none is doubted; with %s, other pads or tips that move the difference over a third of an octave by %s"
            + " would be found in 7 of 10 studies; however broadly they move it, %s")
        .formatted(
            units,
            alternatives(
                said.stream()
                    .map(hz -> sized(foundDb(hz)) + " near " + Numbers.hertz(hz))
                    .toList()),
            alternatives(said.stream().map(hz -> sized(broadlyFoundDb(hz))).toList()));
  }

  private static String sized(double db) {
    return Numbers.fixed(db, 1) + " dB";
  }

  private static String alternatives(List<String> words) {
    int last = words.size() - 1;
    return last == 0
        ? words.get(0)
        : String.join(", ", words.subList(0, last)) + " or " + words.get(last);
  }

  /**
   * The size of a departure over a third of an octave about a frequency that would be found in 7 of
   * 10 studies, dB; at the nearest band that is judged, of a kind of five or more units.
   */
  public double foundDb(double hz) {
    return Math.min(broadlyFoundDb(hz), deviations() * contrast.spreadDb(nearest(hz)));
  }

  /** The same of one so broad that it does not stand out against either side. */
  public double broadlyFoundDb(double hz) {
    return deviations() * level.spreadDb(nearest(hz));
  }

  private double deviations() {
    double n = paired.units().size();
    return limit * Math.sqrt(n / (n - 1)) + SEVEN_IN_TEN;
  }

  /** Whether judged bands reach to within a third of an octave about a frequency. */
  private boolean reaches(double hz) {
    return Math.abs(Math.log(midHz(nearest(hz)) / hz)) < Math.log(2) / 6;
  }

  private int nearest(double hz) {
    return IntStream.of(judged)
        .boxed()
        .min(Comparator.comparingDouble(b -> Math.abs(Math.log(midHz(b) / hz))))
        .orElseThrow();
  }

  private double midHz(int band) {
    return paired.grid().band(band).midHz();
  }
}
