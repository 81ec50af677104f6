package org.twinrig.capture;

import java.util.List;
import java.util.OptionalDouble;

/**
 * One specimen of a headphone.
 *
 * @param kind what sort of headphone it is, with its state, compared exactly
 * @param pads the ear pads or tips it was measured with; empty when not stated
 * @param impedanceOhm nominal impedance, Ω, if noted
 * @param confirmed what the lab answers to doubts about the unit; empty when nothing
 * @param line the line of units.csv it stands in, from 1
 */
public record Unit(
    String name,
    String kind,
    Role role,
    String pads,
    OptionalDouble impedanceOhm,
    String note,
    String confirmed,
    int line) {

  /** A state in which a unit corrects for what it is worn on. */
  public static final String ADAPTIVE = "adaptive";

  /** The states a unit can be measured in; without one it is passive. */
  public static final List<String> STATES =
      List.of("passive", "ANC on", "ANC off", "wireless", ADAPTIVE);

  /** A unit whose impedance is not noted. */
  public Unit(String name, String kind, Role role, String pads, String note, int line) {
    this(name, kind, role, pads, OptionalDouble.empty(), note, "", line);
  }

  /**
   * The kind that units of a kind in a state make, which is a kind apart: of passive ones the kind
   * itself, else for example {@code in-ear, ANC on}.
   */
  public static String kindInState(String kind, String state) {
    return state.isEmpty() || state.equals(STATES.get(0)) ? kind : kind + ", " + state;
  }

  /** Whether a kind is one of units in the state they are in when nothing is said of it. */
  public static boolean passive(String kind) {
    return STATES.stream().skip(1).noneMatch(state -> kind.endsWith(", " + state));
  }

  /** Whether a kind is one of units that correct for what they are worn on. */
  public static boolean adaptive(String kind) {
    return kind.endsWith(", " + ADAPTIVE);
  }

  /** What a unit is used for. */
  public enum Role {
    /** Enters the estimates. */
    FIT,
    /** Never enters a fit; its errors are reported apart. */
    HOLDOUT,
    /** Never enters a fit; it is captured in every session to show drift. */
    CHECK
  }

  public Unit {
    if (name.isBlank() || kind.isBlank()) {
      throw new IllegalArgumentException("a unit needs a name and a kind");
    }
  }
}
