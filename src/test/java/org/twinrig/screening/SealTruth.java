package org.twinrig.screening;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.twinrig.PlannedStudy;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulationPlan;

/**
 * A study in which it is known which captures lost their seal: a lab that notices all of them wrote
 * it down, and its notes are then taken away.
 *
 * @param study without the lab's notes
 * @param lost the captures it had noted
 */
record SealTruth(SimulatedScreening study, Set<CaptureEntry> lost) {

  /** Lost seals and good ones of a kind, and how many of each are accused. */
  static final class Count {
    int lost;
    int found;
    int good;
    int accused;

    @Override
    public String toString() {
      return found + " of " + lost + " lost seals found, " + accused + " of " + good + " accused";
    }
  }

  static SealTruth drawn(int seatings, double firstOnHead, double later, long seed) {
    SimulatedScreening noted =
        SimulatedScreening.of(
            PlannedStudy.troubled(
                    SimulationPlan.standard()
                        .withKinds(SimulatedKind.values())
                        .withUnitsPerKind(10)
                        .withSeatings(seatings)
                        .withSeed(seed),
                    new SimulationPlan.Troubles(firstOnHead, later, 1, 0, 0, 0))
                .draw());
    List<Capture> captures = new ArrayList<>();
    Set<CaptureEntry> lost = new HashSet<>();
    for (Capture c : noted.captures()) {
      CaptureEntry e = unnoted(c.entry());
      captures.add(new Capture(e, c.response(), c.sha256()));
      if (c.entry().excludedByLab()) {
        lost.add(e);
      }
    }
    return new SealTruth(noted.with(captures), lost);
  }

  private static CaptureEntry unnoted(CaptureEntry e) {
    return new CaptureEntry(
        e.unit(),
        e.fixture(),
        e.side(),
        e.seating(),
        e.file(),
        e.session(),
        "",
        e.note(),
        "",
        e.line());
  }

  /** Adds up, per kind; lost seals of a unit that has no good seating there do not count. */
  void count(Map<String, Count> perKind) {
    Map<String, String> kinds = new HashMap<>();
    study.study().units().forEach(u -> kinds.put(u.name(), u.kind()));
    Set<CaptureEntry> accused = new HashSet<>();
    study.screen().verdicts().stream()
        .filter(v -> v.finding() == Finding.LOST_SEAL)
        .forEach(v -> accused.add(v.capture()));
    Set<String> sealed = new HashSet<>();
    for (Capture c : study.captures()) {
      if (!lost.contains(c.entry())) {
        sealed.add(place(c.entry()));
      }
    }
    for (Capture c : study.captures()) {
      CaptureEntry e = c.entry();
      Count count = perKind.computeIfAbsent(kinds.get(e.unit()), k -> new Count());
      if (!lost.contains(e)) {
        count.good++;
        count.accused += accused.contains(e) ? 1 : 0;
      } else if (sealed.contains(place(e))) {
        count.lost++;
        count.found += accused.contains(e) ? 1 : 0;
      }
    }
  }

  private static String place(CaptureEntry e) {
    return e.unit() + "/" + e.fixture() + "/" + e.side();
  }
}
