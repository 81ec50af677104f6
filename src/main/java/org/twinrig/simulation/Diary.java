package org.twinrig.simulation;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.twinrig.capture.Calibrator;
import org.twinrig.capture.Session;

/**
 * The sessions of a study, the old fixture's first: so many units in a row on one fixture, then the
 * chain is switched off. By their dates they alternate, the fixture that comes first changing from
 * pair to pair, so that drift and wear do not pass for a difference between the fixtures. The third
 * session on the head drifts, by {@code drift} dB above 6 kHz at its end; 0 for none.
 */
record Diary(List<Session> sessions, int perFixture, double drift) {

  private static final int UNITS_PER_SESSION = 7;
  private static final int DRIFTING = 2;
  private static final double NOMINAL_DB = 94;
  private static final double DRIFT_CORNER_HZ = 6000;

  static Diary of(SimulationPlan plan, int turns) {
    int perFixture = (turns + UNITS_PER_SESSION - 1) / UNITS_PER_SESSION;
    List<Session> sessions = new ArrayList<>();
    for (int fixture = 0; fixture < 2; fixture++) {
      for (int s = 0; s < perFixture; s++) {
        sessions.add(
            session(plan, fixture, s, new Place(2 * s + (fixture + s) % 2, sessions.size())));
      }
    }
    return new Diary(sessions, perFixture, perFixture > DRIFTING ? plan.troubles().drift() : 0);
  }

  /** Which working day a session is held on, and which row of the table it is; from 0. */
  private record Place(int day, int row) {}

  private static Session session(SimulationPlan plan, int fixture, int number, Place place) {
    Draws draws = Purpose.SESSION.draws(plan.seed(), fixture, number);
    boolean drifting = plan.troubles().drift() > 0 && fixture == 1 && number == DRIFTING;
    double read = NOMINAL_DB + draws.gaussian(0, 0.06) - (drifting ? 0.7 : 0);
    return new Session(
        String.format(Locale.ROOT, "%s-%02d", fixture == 0 ? "plate" : "head", number + 1),
        LocalDate.of(2026, 3, 2).plusDays(place.day + place.day / 5 * 2L).toString(),
        fixture == 0 ? "plate" : "head",
        NOMINAL_DB,
        Math.rint(read * 100) / 100,
        Calibrator.LEVEL_CONTROLLED,
        OptionalDouble.of(Math.rint(draws.gaussian(100.9, 0.6) * 10) / 10),
        OptionalDouble.of(Math.rint(draws.gaussian(22.6, 0.5) * 10) / 10),
        draws.chance(0.5) ? "I. Thorn" : "M. Reed",
        drifting ? "calibrator read low at the start" : "",
        place.row + 2);
  }

  Session of(int fixture, int turn) {
    return sessions.get(fixture * perFixture + turn / UNITS_PER_SESSION);
  }

  boolean drifting(int fixture, int turn) {
    return drift > 0 && fixture == 1 && turn / UNITS_PER_SESSION == DRIFTING;
  }

  /**
   * Spectral drift of a capture at a frequency, dB: a first-order shelf that grows unit by unit.
   */
  double driftDb(int fixture, int turn, double hz) {
    if (!drifting(fixture, turn)) {
      return 0;
    }
    double progress = (turn % UNITS_PER_SESSION + 1.0) / UNITS_PER_SESSION;
    double x = hz / DRIFT_CORNER_HZ;
    return -drift * progress * x * x / (1 + x * x);
  }
}
