package org.twinrig.simulation;

import java.util.Arrays;
import java.util.stream.Collectors;

/**
 * A kind of headphone as an acoustic source, with the ranges its units are drawn from. Units of one
 * kind are independent draws from the same ranges.
 */
public enum SimulatedKind {
  /** Light open membrane: low source impedance, hardly cares what it plays into. */
  OPEN_OVER_EAR("open over-ear", KindRanges.OPEN_OVER_EAR),

  /** Closed cup: the seal decides the bass. */
  CLOSED_OVER_EAR("closed over-ear", KindRanges.CLOSED_OVER_EAR),

  /** Small cushion on the pinna: little front volume, a leak that is never quite shut. */
  ON_EAR("on-ear", KindRanges.ON_EAR),

  /** Sealed into the canal: small volumes, high source impedance. */
  IN_EAR("in-ear", KindRanges.IN_EAR);

  private final String label;

  @SuppressWarnings("ImmutableEnumChecker") // records, and lists that cannot be changed
  private final KindRanges ranges;

  SimulatedKind(String label, KindRanges ranges) {
    this.label = label;
    this.ranges = ranges;
  }

  /** The kind as study files write it: for example {@code in-ear}. */
  public String label() {
    return label;
  }

  public static SimulatedKind ofLabel(String label) {
    return Arrays.stream(values())
        .filter(kind -> kind.label.equals(label))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    Arrays.stream(values())
                        .map(SimulatedKind::label)
                        .collect(
                            Collectors.joining(
                                ", ", "a kind must be one of ", ", but is " + label))));
  }

  /** Key of the kind's random numbers; hashes of strings are the same everywhere. */
  long key() {
    return label.hashCode();
  }

  KindRanges ranges() {
    return ranges;
  }
}
