package org.twinrig.proof;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.twinrig.proof.Happening.Draw;
import org.twinrig.proof.Happening.NewGraph;
import org.twinrig.proof.Happening.OfStudy;
import org.twinrig.proof.Lab.Build;
import org.twinrig.proof.Lab.Measured;

/** Every situation is what it says, on both simulators. */
class HappeningTest {
  private static final int UNITS = 6;

  static List<Draw> draws() {
    return List.of(
        new Draw(new ChainLab(Small.harness(2, 7, 1)), 7, UNITS, 3),
        new Draw(new CurveLab(7), 7, UNITS, 3));
  }

  private static Happening happening(String word) {
    return Happening.ALL.stream().filter(h -> h.word().equals(word)).findFirst().orElseThrow();
  }

  private static int at(Draw draw, double hz) {
    double[] axis = draw.lab().hz();
    return IntStream.range(0, axis.length).filter(i -> axis[i] >= hz).findFirst().orElseThrow();
  }

  private static double[] to(Measured unit) {
    return Measured.mean(unit.to(), Lab.SEATINGS);
  }

  private static double[] from(Measured unit) {
    return Measured.mean(unit.from(), Lab.SEATINGS);
  }

  @ParameterizedTest
  @MethodSource("draws")
  void usuallyEveryKindHasItsUnits(Draw draw) {
    Map<String, List<Measured>> units = Happening.units(OfStudy.USUAL, draw);
    assertEquals(
        List.of("closed over-ear", "in-ear", "open over-ear"), List.copyOf(units.keySet()));
    for (List<Measured> kind : units.values()) {
      assertEquals(UNITS, kind.size());
      for (Measured unit : kind) {
        assertEquals(Lab.SEATINGS, unit.from().size());
        assertEquals(Lab.SEATINGS, unit.to().size());
        assertEquals(draw.lab().hz().length, unit.to().get(0).length);
      }
    }
    List<NewGraph> graphs = happening("ideal").newGraphs(draw, 2);
    assertEquals(6, graphs.size());
    assertEquals(OptionalInt.of(Lab.SEATINGS), graphs.get(0).seatings());
    Measured first = units.get("closed over-ear").get(0);
    assertNotEquals(from(first)[70], graphs.get(0).fromDb()[70]);
  }

  /** All units depart from their kind's transfer by a factor of their own, in shape. */
  @ParameterizedTest
  @MethodSource("draws")
  void heavyTailsStretchWhatIsTheUnitsOwn(Draw draw) {
    List<Measured> usual = Happening.units(OfStudy.USUAL, draw).get("in-ear");
    List<Measured> heavy = Happening.units(OfStudy.HEAVY_TAILS, draw).get("in-ear");
    double[] mean = draw.lab().meanTransferDb("in-ear");
    double[] factors = new double[UNITS];
    for (int u = 0; u < UNITS; u++) {
      assertArrayEquals(from(usual.get(u)), from(heavy.get(u)), 1e-9);
      double[] before = steps(usual.get(u), mean);
      double[] after = steps(heavy.get(u), mean);
      int largest =
          IntStream.range(0, before.length)
              .boxed()
              .max((a, b) -> Double.compare(Math.abs(before[a]), Math.abs(before[b])))
              .orElseThrow();
      factors[u] = after[largest] / before[largest];
      double factor = factors[u];
      assertArrayEquals(Arrays.stream(before).map(s -> s * factor).toArray(), after, 1e-9);
      assertTrue(factor > 0.3 && factor < 30, () -> "" + factor);
    }
    assertEquals(UNITS, Arrays.stream(factors).distinct().count());
  }

  /** How the unit's transfer departs from its kind's, point to point: without its level. */
  private static double[] steps(Measured unit, double[] mean) {
    double[] own = to(unit);
    double[] from = from(unit);
    Arrays.setAll(own, i -> own[i] - from[i] - mean[i]);
    double[] steps = new double[own.length - 1];
    Arrays.setAll(steps, i -> own[i + 1] - own[i]);
    return steps;
  }

  @ParameterizedTest
  @MethodSource("draws")
  void twoSortsAreCalledOneKind(Draw draw) {
    Map<String, List<Measured>> units = Happening.units(OfStudy.TWO_SORTS, draw);
    assertEquals(List.of("over-ear"), List.copyOf(units.keySet()));
    Map<String, List<Measured>> usual = Happening.units(OfStudy.USUAL, draw);
    List<Measured> both = units.get("over-ear");
    assertEquals(UNITS, both.size());
    // Half of each: the first of either sort are those that would have been drawn alone.
    if (draw.lab() instanceof CurveLab) {
      assertArrayEquals(to(usual.get("open over-ear").get(0)), to(both.get(0)));
      assertArrayEquals(to(usual.get("closed over-ear").get(0)), to(both.get(UNITS / 2)));
    }
    List<NewGraph> graphs = happening("two sorts in a kind").newGraphs(draw, 2);
    assertEquals(4, graphs.size());
    assertTrue(graphs.stream().allMatch(g -> g.kind().equals("over-ear")));
  }

  @ParameterizedTest
  @MethodSource("draws")
  void oneUnitIsAnothersAndAllOthersAreAsUsual(Draw draw) {
    Map<String, List<Measured>> units = Happening.units(OfStudy.MISLABELLED, draw);
    Map<String, List<Measured>> usual = Happening.units(OfStudy.USUAL, draw);
    assertEquals(List.of("closed over-ear", "open over-ear"), List.copyOf(units.keySet()));
    for (String kind : units.keySet()) {
      String other = kind.startsWith("open") ? "closed over-ear" : "open over-ear";
      Measured stranger = draw.lab().measure(other, 1, Build.USUAL, UNITS, 3, 3).get(0);
      assertArrayEquals(to(stranger), to(units.get(kind).get(0)));
      for (int u = 1; u < UNITS; u++) {
        assertArrayEquals(to(usual.get(kind).get(u)), to(units.get(kind).get(u)));
      }
    }
  }

  /** Sides of one headphone are nearer to each other than to any other unit. */
  @ParameterizedTest
  @MethodSource("draws")
  void sidesStandSideBySide(Draw draw) {
    List<Measured> units = Happening.units(OfStudy.SIDES, draw).get("in-ear");
    assertEquals(UNITS, units.size());
    for (int u = 0; u < UNITS; u += 2) {
      for (int other = 0; other < UNITS; other++) {
        if (other != u && other != u + 1) {
          assertTrue(away(units.get(u), units.get(u + 1)) < away(units.get(u), units.get(other)));
        }
      }
    }
  }

  private static double away(Measured some, Measured other) {
    double[] a = from(some);
    double[] b = from(other);
    double level =
        Arrays.stream(a).average().orElseThrow() - Arrays.stream(b).average().orElseThrow();
    return IntStream.range(0, a.length).mapToDouble(i -> Math.pow(a[i] - b[i] - level, 2)).sum();
  }

  /** By a decibel in deep bass and treble from the first unit to the last, on the new fixture. */
  @ParameterizedTest
  @MethodSource("draws")
  void theChainDriftsOnTheNewFixture(Draw draw) {
    List<Measured> usual = Happening.units(OfStudy.USUAL, draw).get("in-ear");
    List<Measured> drifted = Happening.units(OfStudy.DRIFT, draw).get("in-ear");
    for (int u = 0; u < UNITS; u++) {
      double share = u / (UNITS - 1.0);
      assertArrayEquals(from(usual.get(u)), from(drifted.get(u)), 1e-9);
      for (double hz : new double[] {12, 18_000}) {
        int i = at(draw, hz);
        assertEquals(-share, to(drifted.get(u))[i] - to(usual.get(u))[i], 0.01);
      }
      int i = at(draw, 600);
      assertEquals(0, to(drifted.get(u))[i] - to(usual.get(u))[i], 0.01);
    }
  }

  /** The same new units, with other old graphs. */
  @ParameterizedTest
  @MethodSource("draws")
  void oldGraphsAreWhatTheirSituationSays(Draw draw) {
    List<NewGraph> ideal = happening("ideal").newGraphs(draw, 3);
    List<NewGraph> noisy = happening("noisy old graphs").newGraphs(draw, 3);
    List<NewGraph> stated = happening("one seating stated").newGraphs(draw, 3);
    List<NewGraph> silent = happening("one seating not stated").newGraphs(draw, 3);
    List<NewGraph> loud = happening("louder treble").newGraphs(draw, 3);
    double squares = 0;
    for (int g = 0; g < ideal.size(); g++) {
      assertArrayEquals(ideal.get(g).toDb(), noisy.get(g).toDb());
      assertArrayEquals(ideal.get(g).toDb(), stated.get(g).toDb());
      assertArrayEquals(stated.get(g).fromDb(), silent.get(g).fromDb());
      assertNotEquals(ideal.get(g).fromDb()[0], stated.get(g).fromDb()[0]);
      assertEquals(OptionalInt.of(1), stated.get(g).seatings());
      assertEquals(OptionalInt.empty(), silent.get(g).seatings());
      for (int i = 0; i < Lab.POINTS; i++) {
        squares += Math.pow(noisy.get(g).fromDb()[i] - ideal.get(g).fromDb()[i], 2);
        double from = loud.get(g).fromDb()[i] - ideal.get(g).fromDb()[i];
        assertEquals(from, loud.get(g).toDb()[i] - ideal.get(g).toDb()[i], 1e-9);
      }
      assertEquals(
          6, loud.get(g).fromDb()[at(draw, 15_000)] - ideal.get(g).fromDb()[at(draw, 15_000)], 0.1);
      assertEquals(
          0, loud.get(g).fromDb()[at(draw, 1000)] - ideal.get(g).fromDb()[at(draw, 1000)], 0.01);
    }
    assertEquals(1.5, Math.sqrt(squares / (ideal.size() * Lab.POINTS)), 0.15);
  }

  /** Against the same units sealed: bass is lost on both fixtures. */
  @ParameterizedTest
  @MethodSource("draws")
  void leakyUnitsLackBass(Draw draw) {
    List<NewGraph> leaky = happening("leaky among sealed").newGraphs(draw, 3);
    List<NewGraph> ideal =
        happening("ideal").newGraphs(draw, 3).stream()
            .filter(g -> !g.kind().startsWith("open"))
            .toList();
    assertEquals(ideal.size(), leaky.size());
    int low = at(draw, 40);
    int middle = at(draw, 700);
    for (int g = 0; g < ideal.size(); g++) {
      assertEquals(ideal.get(g).kind(), leaky.get(g).kind());
      for (boolean onNew : new boolean[] {false, true}) {
        double[] sound = onNew ? ideal.get(g).toDb() : ideal.get(g).fromDb();
        double[] leaks = onNew ? leaky.get(g).toDb() : leaky.get(g).fromDb();
        assertTrue(sound[low] - sound[middle] > leaks[low] - leaks[middle] + 1.5);
      }
    }
  }
}
