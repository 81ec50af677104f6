package org.twinrig.screening;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Side;
import org.twinrig.response.Response;

/**
 * Faults planted into simulated studies without any: each is found in 95 % of the cases or more.
 */
class PlantedFaultsTest {
  private static List<SimulatedScreening> clean;

  @BeforeAll
  static void drawOnce() {
    clean = SimulatedScreening.drawn(2, 5, 12, 41);
  }

  private static void assertFound(
      Finding finding, Predicate<CaptureEntry> where, UnaryOperator<Response> fault) {
    int planted = 0;
    int found = 0;
    for (SimulatedScreening study : clean) {
      PlantedFault spoiled = PlantedFault.in(study, where, fault);
      planted += spoiled.planted().size();
      found += (int) spoiled.found(finding);
    }
    assertTrue(planted > 40, "planted " + planted);
    assertTrue(found >= 0.95 * planted, finding + ": " + found + " of " + planted);
  }

  @Test
  void addedNoiseIsFound() {
    Random random = new Random(5);
    assertFound(Finding.NOISY, PlantedFault::now, r -> PlantedFault.noisy(r, 0.5, random));
  }

  @Test
  void aLevelJumpIsFound() {
    assertFound(
        Finding.LEVEL_JUMP,
        e -> PlantedFault.now(e) && e.fixture().equals("plate"),
        r -> r.plus(3));
    assertFound(Finding.LEVEL_JUMP, PlantedFault::now, r -> r.plus(-6));
  }

  @Test
  void fewPointsAreFound() {
    assertFound(Finding.FEW_POINTS, PlantedFault::now, r -> PlantedFault.thinned(r, 4));
  }

  @Test
  void aNarrowRangeIsFound() {
    assertFound(Finding.NARROW_RANGE, PlantedFault::now, r -> PlantedFault.cut(r, 50, 16_000));
  }

  @Test
  void aSeatingThatIsAnotherUnitsIsOdd() {
    int planted = 0;
    int found = 0;
    for (SimulatedScreening study : clean) {
      Map<String, String> kinds = study.kinds();
      Map<String, Capture> lastOfKind = new HashMap<>();
      List<Capture> captures = new ArrayList<>();
      Set<CaptureEntry> mixedUp = new HashSet<>();
      for (Capture c : study.captures()) {
        String key = kinds.get(c.entry().unit()) + c.entry().fixture();
        Capture other = lastOfKind.get(key);
        if (PlantedFault.now(c.entry())
            && other != null
            && !other.entry().unit().equals(c.entry().unit())) {
          mixedUp.add(c.entry());
          captures.add(new Capture(c.entry(), other.response(), c.sha256()));
        } else {
          captures.add(c);
        }
        if (c.entry().seating() == 4) {
          lastOfKind.put(key, c);
        }
      }
      PlantedFault spoiled = new PlantedFault(study.with(captures), mixedUp);
      planted += mixedUp.size();
      found +=
          (int)
              spoiled.study().screen().verdicts().stream()
                  .filter(
                      v -> v.finding() == Finding.ODD_SEATING || v.finding() == Finding.LOST_SEAL)
                  .map(Verdict::capture)
                  .filter(mixedUp::contains)
                  .distinct()
                  .count();
    }
    assertTrue(planted > 40);
    assertTrue(found >= 0.95 * planted, found + " of " + planted);
  }

  @Test
  void exchangedSidesAreFound() {
    int planted = 0;
    int found = 0;
    for (SimulatedScreening study : clean) {
      SimulatedScreening uneven =
          PlantedFault.in(study, e -> e.side() == Side.R, r -> PlantedFault.brighter(r, 6)).study();
      Map<String, Response> bySide =
          uneven.captures().stream()
              .collect(Collectors.toMap(c -> spot(c.entry(), c.entry().side()), Capture::response));
      List<Capture> captures = new ArrayList<>();
      Set<CaptureEntry> swapped = new HashSet<>();
      for (Capture c : uneven.captures()) {
        CaptureEntry e = c.entry();
        if (PlantedFault.now(e) && e.side() != Side.M) {
          Side other = e.side() == Side.L ? Side.R : Side.L;
          captures.add(new Capture(e, bySide.get(spot(e, other)), c.sha256()));
          swapped.add(e);
        } else {
          captures.add(c);
        }
      }
      planted += swapped.size() / 2; // a pair is reported once, at the side that moved farther
      found +=
          (int) new PlantedFault(uneven.with(captures), swapped).found(Finding.CHANNEL_IMBALANCE);
    }
    assertTrue(planted > 15, "planted " + planted);
    assertTrue(found >= 0.95 * planted, found + " of " + planted);
  }

  /** A side that moved in one seating, the left of some and the right of other units. */
  @Test
  void ofTwoSidesTheOneThatMovedIsAccused() {
    int planted = 0;
    int found = 0;
    int wrong = 0;
    for (SimulatedScreening study : clean) {
      PlantedFault spoiled =
          PlantedFault.in(
              study,
              e ->
                  PlantedFault.now(e)
                      && e.side() == (Math.floorMod(e.unit().hashCode(), 2) == 0 ? Side.L : Side.R),
              r -> PlantedFault.brighter(r, 12));
      planted += spoiled.planted().size();
      found += (int) spoiled.found(Finding.CHANNEL_IMBALANCE);
      Set<String> mates =
          spoiled.planted().stream()
              .map(e -> spot(e, e.side() == Side.L ? Side.R : Side.L))
              .collect(Collectors.toSet());
      wrong +=
          (int)
              spoiled.study().screen().verdicts().stream()
                  .filter(v -> v.finding() == Finding.CHANNEL_IMBALANCE)
                  .filter(v -> mates.contains(spot(v.capture(), v.capture().side())))
                  .count();
    }
    assertTrue(planted > 15, "planted " + planted);
    assertTrue(found >= 0.95 * planted, found + " of " + planted);
    assertTrue(wrong == 0, wrong + " sides accused that did not move");
  }

  private static String spot(CaptureEntry e, Side side) {
    return e.unit() + "/" + e.fixture() + "/" + e.seating() + "/" + side;
  }

  @Test
  void aUnitWithUnevenSidesIsFoundAtEverySeating() {
    int planted = 0;
    int found = 0;
    for (SimulatedScreening study : clean) {
      Map<String, TreeSet<String>> ofKind = new HashMap<>();
      Map<String, String> kinds = study.kinds();
      study.captures().stream()
          .map(Capture::entry)
          .filter(e -> e.side() == Side.R)
          .forEach(
              e -> ofKind.computeIfAbsent(kinds.get(e.unit()), k -> new TreeSet<>()).add(e.unit()));
      // With fewer than three others a kind shows nothing to compare with.
      Set<String> uneven =
          ofKind.values().stream()
              .filter(units -> units.size() > 3)
              .map(TreeSet::first)
              .collect(Collectors.toSet());
      PlantedFault spoiled =
          PlantedFault.in(
              study,
              e -> e.side() == Side.R && uneven.contains(e.unit()),
              r -> PlantedFault.brighter(r, 12));
      planted += spoiled.planted().size();
      found += (int) spoiled.found(Finding.CHANNEL_IMBALANCE);
    }
    assertTrue(planted > 40);
    assertTrue(found >= 0.95 * planted, found + " of " + planted);
  }

  @Test
  void aCopyIsFoundWhateverItsLevelAndName() {
    for (SimulatedScreening study : clean) {
      Response first = study.captures().get(0).response();
      CaptureEntry victim = study.captures().get(7).entry();
      PlantedFault spoiled = PlantedFault.in(study, e -> e.equals(victim), r -> first.plus(-0.37));
      assertEquals(1, spoiled.found(Finding.SAME_CONTENT));
    }
  }
}
