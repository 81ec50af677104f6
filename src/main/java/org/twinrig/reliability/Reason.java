package org.twinrig.reliability;

import java.util.Collection;
import java.util.Optional;
import java.util.stream.Collectors;

/** What is said of a band beside its mark, why it is below reliable first of all; in this order. */
public enum Reason {
  /** No unit of the kind, or the graph itself, has a level here. */
  NO_DATA("no data", "nothing was measured here"),
  FEW_UNITS("few units", "too few units were measured on both fixtures"),
  /** The prediction interval is wider than the reliable tolerance. */
  WIDE_PREDICTION("wide prediction", "single units depart too far from what is predicted for them"),
  /** Over half of the variance of the differences is seating. */
  SEATING_SCATTER("seating scatter", "the level changes from one seating to the next"),
  /** Over half of the variance of the differences is between units. */
  UNITS_DISAGREE("units disagree", "the units of the kind do not differ alike"),
  /** Outside the range that either fixture can be used in. */
  OUTSIDE_USABLE_RANGE(
      "outside the usable range", "a fixture cannot be relied on here, not even as a coupler"),
  DECLARED_ZONE("declared zone", "the lab declared this zone"),
  RESONANCE_WANDERS("resonance wanders", "a notch or peak moves between the fixtures"),
  KIND_NOT_IN_THE_STUDY("kind not in the study", "the study has no units of this kind"),
  OUTSIDE_THE_STUDY("outside the study", "the study has no unit like this one"),
  /** The graph is smoothed more than the study's captures, and the band is no wider than that. */
  SMOOTHED_MORE("smoothed more", "the old graph is smoothed more than the study's captures"),
  /** The graph is smoothed in decibels and the captures over as much in power, or the reverse. */
  SMOOTHED_OTHERWISE(
      "smoothed otherwise",
      "of old graph and captures, one is smoothed in decibels and one in power"),
  /**
   * A capture, a reference or the graph itself has points further apart than 1/6 octave here, or a
   * window too short.
   */
  COARSE_POINTS(
      "coarse points",
      "points are further apart than 1/6 octave, or the window of a sound is too short"),
  /** Only the best seal of several seatings was kept, and seatings scatter here by their seal. */
  BEST_SEAL("best seal", "the old graph shows the best seal, not what a seating is like"),
  /** The units correct for what they are worn on, and so for the fixture. */
  ADAPTIVE("adaptive", "the headphone corrects for what it is worn on"),
  /** No unit of the kind differs from any other: a width of 0 is an alarm, not a best mark. */
  NO_SCATTER("no scatter", "no unit differs from any other, as copies of one curve would"),
  /** Outside the range in which a fixture is like a human ear; lowers no mark. */
  NOT_EAR_LIKE(
      "not ear-like", "a fixture is not made to be like a human ear here, which lowers no mark");

  private final String word;
  private final String plain;

  Reason(String word, String plain) {
    this.word = word;
    this.plain = plain;
  }

  /**
   * The best mark the reason allows; nothing for reasons that only say why a prediction is wide.
   */
  public Optional<Mark> best() {
    return switch (this) {
      case WIDE_PREDICTION, SEATING_SCATTER, UNITS_DISAGREE, NOT_EAR_LIKE -> Optional.empty();
      case FEW_UNITS, NO_DATA, KIND_NOT_IN_THE_STUDY, OUTSIDE_THE_STUDY, ADAPTIVE, NO_SCATTER ->
          Optional.of(Mark.UNRELIABLE);
      case OUTSIDE_USABLE_RANGE,
          DECLARED_ZONE,
          RESONANCE_WANDERS,
          SMOOTHED_MORE,
          SMOOTHED_OTHERWISE,
          COARSE_POINTS,
          BEST_SEAL ->
          Optional.of(Mark.CAUTION);
    };
  }

  /** Whether it says something that no mark is lowered for: a reliable band may have it. */
  public boolean note() {
    return this == NOT_EAR_LIKE;
  }

  /** The best mark that several reasons allow together. */
  static Mark best(Collection<Reason> reasons) {
    return reasons.stream().flatMap(r -> r.best().stream()).reduce(Mark.RELIABLE, Mark::worse);
  }

  /** The reason as files write it: for example {@code few units}. */
  public String word() {
    return word;
  }

  /** The reason as a clause for readers: {@code the units of the kind do not differ alike}. */
  public String plain() {
    return plain;
  }

  /**
   * Several reasons as files write them: joined by {@code "; "} in the order of this enum, without
   * repeats.
   */
  public static String join(Collection<Reason> reasons) {
    return reasons.stream().distinct().sorted().map(Reason::word).collect(Collectors.joining("; "));
  }
}
