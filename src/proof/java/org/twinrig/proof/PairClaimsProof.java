package org.twinrig.proof;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.twinrig.doubt.Doubt;
import org.twinrig.doubt.FixturesExchanged;
import org.twinrig.doubt.KindDoubtful;
import org.twinrig.doubt.OneUnitTwice;
import org.twinrig.doubt.UnitsExchanged;
import org.twinrig.evidence.ClopperPearson;
import org.twinrig.proof.Lab.Build;
import org.twinrig.proof.Lab.Measured;
import org.twinrig.study.Settings;

/**
 * Tries the checks of whole units ({@link org.twinrig.doubt.UnitDoubts}): how often units that
 * changed places, one unit entered twice, captures under the wrong fixture and units under the
 * wrong kind are doubted by that name, and how often units are that are as they should be.
 *
 * <p>The promise, as far as the count of studies can tell: at most 2 % of units without a fault are
 * doubted, and at most 10 % of clean studies of three kinds have a doubt of any check of units;
 * with 12 units or more, 90 % of exchanged units are found, with three seatings or more 70 % of
 * units entered twice, and on the impedance simulator 90 % of in-ears among over-ears or the
 * reverse; on the curve simulator units of a kind differ as much as kinds do. Other rows promise
 * nothing.
 *
 * @param designs units of each kind and seatings on each fixture
 * @param moreClean clean studies beside each one with faults
 */
record PairClaimsProof(List<Design> designs, int moreClean) implements Proof<PairClaimsProof.Row> {
  private static final Settings SETTINGS = Settings.defaults();
  private static final double CONFIDENCE = 0.95;
  private static final double MOST_CLEAN = 0.1;
  private static final double MOST_ACCUSED = 0.02;

  /** Keys of the draws, beside the study's number. */
  private static final long UNITS = 21;

  private static final long OTHERS = 22;
  private static final long SIDES = 23;

  private static final String NONE = "none";
  private static final String ALL = "all three";
  private static final String TIPS = "in-ear";

  /** How many units of each kind there are, and how often each is seated on either fixture. */
  record Design(int units, int seatings) {}

  /**
   * What became of a fault in many studies.
   *
   * @param kind the kind with the fault; of two kinds both, of a wrong kind the true one and the
   *     claimed one
   * @param found studies in which the fault is doubted by name; without a fault, those with a doubt
   * @param innocents units without a fault, over all studies
   * @param accused those of them that are doubted
   */
  record Row(
      String fault,
      String simulator,
      String kind,
      Design design,
      ClopperPearson found,
      int innocents,
      int accused) {}

  private record Case(String fault, String kind, boolean found, int innocents, int accused) {}

  /** The published proof. */
  static PairClaimsProof published() {
    return new PairClaimsProof(
        List.of(
            new Design(6, 1),
            new Design(6, 3),
            new Design(8, 3),
            new Design(12, 1),
            new Design(12, 3),
            new Design(12, 5),
            new Design(20, 3)),
        4);
  }

  @Override
  public List<Row> rows(Harness harness) {
    List<Row> rows = new ArrayList<>();
    for (Lab lab : List.of(new ChainLab(harness), new CurveLab(harness.seed()))) {
      for (Design design : designs) {
        Map<List<String>, List<Case>> cases = new LinkedHashMap<>();
        harness
            .each(
                "%s, %d units, %d seatings".formatted(lab.word(), design.units, design.seatings),
                study -> cases(lab, design, study))
            .forEach(
                s ->
                    s.forEach(
                        c ->
                            cases
                                .computeIfAbsent(List.of(c.fault, c.kind), k -> new ArrayList<>())
                                .add(c)));
        cases.values().forEach(c -> rows.add(row(lab, design, c)));
      }
    }
    return rows;
  }

  private static Row row(Lab lab, Design design, List<Case> cases) {
    return new Row(
        cases.get(0).fault,
        lab.word(),
        cases.get(0).kind,
        design,
        ClopperPearson.of(
            (int) cases.stream().filter(Case::found).count(), cases.size(), CONFIDENCE),
        cases.stream().mapToInt(Case::innocents).sum(),
        cases.stream().mapToInt(Case::accused).sum());
  }

  private List<Case> cases(Lab lab, Design design, int study) {
    Study drawn = new Study(lab, design, study, 0);
    List<Case> cases = new ArrayList<>();
    cases.add(drawn.judged(NONE, ALL, drawn.kinds, "", List.of()));
    for (int more = 1; more <= moreClean; more++) {
      Study clean = new Study(lab, design, study, more);
      cases.add(clean.judged(NONE, ALL, clean.kinds, "", List.of()));
    }
    for (String kind : Lab.KINDS) {
      cases.add(drawn.exchanged(kind, kind));
      cases.add(drawn.twice(kind));
      cases.add(drawn.turned(kind));
      for (String other : Lab.KINDS) {
        if (!other.equals(kind)) {
          cases.add(drawn.wrongKind(kind, other));
        }
        if (kind.compareTo(other) < 0) {
          cases.add(drawn.exchanged(kind, other));
        }
      }
    }
    return cases;
  }

  /** A study without a fault, and what is made of it. */
  private static final class Study {
    private final Lab lab;
    private final Design design;
    private final int number;
    private final Map<String, List<Measured>> kinds = new TreeMap<>();

    Study(Lab lab, Design design, int number, int which) {
      this.lab = lab;
      this.design = design;
      this.number = number;
      for (String kind : Lab.KINDS) {
        kinds.put(kind, seated(lab.measure(kind, design.units, Build.USUAL, UNITS, number, which)));
      }
    }

    private List<Measured> seated(List<Measured> units) {
      int s = design.seatings;
      return units.stream()
          .map(u -> new Measured(u.from().subList(0, s), u.to().subList(0, s)))
          .toList();
    }

    Case exchanged(String kind, String other) {
      Map<String, List<Measured>> changed = new TreeMap<>(kinds);
      boolean same = kind.equals(other);
      int second = same ? 1 : 0;
      Measured one = kinds.get(kind).get(0);
      Measured two = kinds.get(other).get(second);
      put(changed, kind, 0, new Measured(one.from(), two.to()));
      put(changed, other, second, new Measured(two.from(), one.to()));
      return judged(
          UnitsExchanged.DOUBT,
          same ? kind : kind + " and " + other,
          changed,
          UnitsExchanged.DOUBT,
          List.of(name(kind, 0), name(other, second)));
    }

    Case twice(String kind) {
      Map<String, List<Measured>> changed = new TreeMap<>(kinds);
      List<Measured> sides = seated(lab.measure(kind, 2, Build.BOTH_SIDES, SIDES, number));
      put(changed, kind, 0, sides.get(0));
      put(changed, kind, 1, sides.get(1));
      return judged(
          OneUnitTwice.DOUBT,
          kind,
          changed,
          OneUnitTwice.DOUBT,
          List.of(name(kind, 0), name(kind, 1)));
    }

    Case turned(String kind) {
      Map<String, List<Measured>> changed = new TreeMap<>(kinds);
      Measured unit = kinds.get(kind).get(0);
      put(changed, kind, 0, new Measured(unit.to(), unit.from()));
      return judged(
          FixturesExchanged.DOUBT, kind, changed, FixturesExchanged.DOUBT, List.of(name(kind, 0)));
    }

    Case wrongKind(String claimed, String truth) {
      Map<String, List<Measured>> changed = new TreeMap<>(kinds);
      put(changed, claimed, 0, seated(lab.measure(truth, 1, Build.USUAL, OTHERS, number)).get(0));
      return judged(
          KindDoubtful.DOUBT,
          truth + " as " + claimed,
          changed,
          KindDoubtful.DOUBT,
          List.of(name(claimed, 0)));
    }

    private static void put(
        Map<String, List<Measured>> kinds, String kind, int unit, Measured measured) {
      List<Measured> units = new ArrayList<>(kinds.get(kind));
      units.set(unit, measured);
      kinds.put(kind, units);
    }

    /** As units are numbered through the kinds in the order of their names. */
    private String name(String kind, int unit) {
      int before = new ArrayList<>(kinds.keySet()).indexOf(kind);
      return "unit " + (before * design.units + unit + 1);
    }

    Case judged(
        String fault,
        String kind,
        Map<String, List<Measured>> changed,
        String word,
        List<String> guilty) {
      List<Doubt> doubts = Reexpressed.unitDoubts(lab.hz(), SETTINGS, changed);
      boolean found =
          guilty.isEmpty()
              ? !doubts.isEmpty()
              : doubts.stream()
                  .anyMatch(
                      d ->
                          d.doubt().equals(word)
                              && List.of(d.name().split(" / ", -1)).containsAll(guilty));
      int accused =
          (int)
              doubts.stream()
                  .flatMap(d -> List.of(d.name().split(" / ", -1)).stream())
                  .distinct()
                  .filter(u -> !guilty.contains(u))
                  .count();
      int units = design.units * Lab.KINDS.size() - guilty.size();
      return new Case(fault, kind, found, units, accused);
    }
  }

  @Override
  public Table<Row> table() {
    return new Table<Row>()
        .text("fault", Row::fault)
        .text("simulator", Row::simulator)
        .text("kind", Row::kind)
        .count("units", r -> r.design.units)
        .count("seatings", r -> r.design.seatings)
        .count("studies", r -> r.found.trials())
        .share("found", r -> Optional.of(r.found))
        .count("innocent_units", Row::innocents)
        .number("innocent_accused", r -> (double) r.accused / r.innocents);
  }

  @Override
  public List<String> broken(Row row) {
    List<String> broken = new ArrayList<>();
    if (row.accused > MOST_ACCUSED * row.innocents) {
      broken.add("more than 2 % of the units without a fault are doubted");
    }
    if (row.fault.equals(NONE) && row.found.low() > MOST_CLEAN) {
      broken.add("more than 10 % of clean studies have a doubt");
    }
    if (row.design.units >= 12 && row.found.high() < promised(row)) {
      broken.add("fewer than %s are found".formatted(promised(row)));
    }
    return broken;
  }

  private static double promised(Row row) {
    return switch (row.fault) {
      case UnitsExchanged.DOUBT -> 0.9;
      case OneUnitTwice.DOUBT -> row.design.seatings >= 3 ? 0.7 : 0;
      case KindDoubtful.DOUBT ->
          row.kind.contains(TIPS) && row.simulator.equals("impedances") ? 0.9 : 0;
      default -> 0;
    };
  }
}
