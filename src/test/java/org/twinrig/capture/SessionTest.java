package org.twinrig.capture;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Dates after ISO 8601, and the order of sessions that follows from them. */
class SessionTest {
  private static Session held(String name, String date, String fixture) {
    return new Session(
        name,
        date,
        fixture,
        94,
        94,
        Calibrator.LEVEL_CONTROLLED,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        "",
        "",
        2);
  }

  private static Optional<LocalDateTime> time(String date) {
    return held("s", date, "plate").time();
  }

  @Test
  void aDayOrATimeIsUnderstoodAndNothingElse() {
    assertEquals(Optional.of(LocalDateTime.of(2026, 3, 2, 0, 0)), time("2026-03-02"));
    assertEquals(Optional.of(LocalDateTime.of(2026, 3, 2, 0, 0)), time(" 2026-03-02 "));
    assertEquals(Optional.of(LocalDateTime.of(2026, 3, 2, 14, 30)), time("2026-03-02T14:30"));
    assertEquals(Optional.of(LocalDateTime.of(2026, 3, 2, 14, 30)), time("2026-03-02 14:30"));
    for (String other :
        List.of("2.3.26", "03/02/2026", "2026-02-30", "2026-03-02 noon", "Monday")) {
      assertEquals(Optional.empty(), time(other), other);
    }
  }

  @Test
  void sessionsStandInTheOrderOfTimeOrOfTheTable() {
    Session late = held("late", "2026-03-02 14:30", "plate");
    Session early = held("early", "2026-03-02", "plate");
    Session same = held("same", "2026-03-02", "plate");
    Session other = held("other", "2026-03-01", "head");
    Session unknown = held("unknown", "spring", "plate");
    assertEquals(
        List.of(early, same, late), Session.inOrder(List.of(late, early, other, same), "plate"));
    assertEquals(
        List.of(late, unknown, early), Session.inOrder(List.of(late, unknown, early), "plate"));
  }
}
