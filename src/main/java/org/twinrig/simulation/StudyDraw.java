package org.twinrig.simulation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Session;
import org.twinrig.capture.Side;
import org.twinrig.response.Response;
import org.twinrig.simulation.SimulatedCapture.Trouble;

/** Measures a planned study: every unit, fixture, seating and side in the order of the tables. */
final class StudyDraw {
  private static final double LATE_START_HZ = 20;

  private final SimulationPlan plan;
  private final Bench bench;
  private final List<Member> members;
  private final Diary diary;

  StudyDraw(SimulationPlan plan, FixturePair fixtures) {
    this.plan = plan;
    this.bench = Bench.on(plan.axis().frequenciesHz(), fixtures);
    this.members = Roster.of(plan);
    this.diary = Diary.of(plan, members.stream().mapToInt(Member::turn).max().orElseThrow() + 1);
  }

  SimulatedStudy study() {
    List<List<SimulatedCapture>> perUnit = members.parallelStream().map(this::capturesOf).toList();
    List<SimulatedCapture> captures = new ArrayList<>();
    for (List<SimulatedCapture> unit : perUnit) {
      for (SimulatedCapture capture : unit) {
        captures.add(onLine(capture, captures.size() + 2));
      }
    }
    List<SimulatedGraph> graphs = new CatalogueDraw(plan, bench, members.size()).graphs();
    return new SimulatedStudy(plan, bench, members, diary.sessions(), captures, graphs);
  }

  private static SimulatedCapture onLine(SimulatedCapture made, int line) {
    CaptureEntry e = made.capture().entry();
    CaptureEntry entry =
        new CaptureEntry(
            e.unit(),
            e.fixture(),
            e.side(),
            e.seating(),
            e.file(),
            e.session(),
            e.exclude(),
            e.note(),
            line);
    return new SimulatedCapture(
        new Capture(entry, made.capture().response(), made.capture().sha256()),
        made.phaseDeg(),
        made.planted(),
        made.dialect());
  }

  private List<SimulatedCapture> capturesOf(Member member) {
    List<SimulatedCapture> captures = new ArrayList<>();
    for (int fixture : member.fixtures()) {
      for (Side side : member.specimen().sides()) {
        Chain.LoadedAxis axis = bench.both().get(fixture);
        FittedUnit fitted = member.specimen().on(axis.fixture(), side, fixture);
        Chain chain = Chain.of(axis, fitted);
        for (int seating = 1; seating <= plan.seatings(); seating++) {
          captures.add(capture(member, fitted, chain, new Spot(fixture, side, seating)));
        }
      }
    }
    return captures;
  }

  /** Where in the study a capture stands. */
  private record Spot(int fixture, Side side, int seating) {}

  private SimulatedCapture capture(Member member, FittedUnit fitted, Chain chain, Spot spot) {
    Specimen specimen = member.specimen();
    // Both sides of a seating share its seal: it is one headband.
    Draws sealing = draws(Purpose.SEAL, specimen, spot, 0);
    FittedUnit.Seal seal = seal(sealing, spot);
    boolean noticed = seal == FittedUnit.Seal.LOST && sealing.chance(plan.troubles().noticed());
    Placement placement = specimen.placement(spot.side(), spot.fixture(), spot.seating());
    Complex[] pressure = chain.pressure(fitted.seated(placement, seal));
    double[] levels = read(member, fitted.unit(), spot, pressure);
    double[] phases = Arrays.stream(pressure).mapToDouble(p -> degrees(p.argument())).toArray();
    CaptureEntry entry = entry(member, fitted, spot, noticed ? "seal lost, seen on screen" : "");
    String content = "made:" + entry.file() + ":" + Arrays.hashCode(levels);
    Capture capture = new Capture(entry, response(specimen, levels), content);
    return new SimulatedCapture(
        capture, phases, planted(seal, member, spot), dialect(specimen, spot));
  }

  private FittedUnit.Seal seal(Draws draws, Spot spot) {
    boolean first = spot.fixture() == 1 && spot.seating() == 1;
    double share = first ? plan.troubles().firstOnHeadLost() : plan.troubles().lost();
    return draws.chance(share) ? FittedUnit.Seal.LOST : FittedUnit.Seal.GOOD;
  }

  private Optional<Trouble> planted(FittedUnit.Seal seal, Member member, Spot spot) {
    if (seal == FittedUnit.Seal.LOST) {
      return Optional.of(Trouble.LOST_SEAL);
    }
    return diary.drifting(spot.fixture(), member.turn())
        ? Optional.of(Trouble.DRIFT)
        : Optional.empty();
  }

  /** What the lab reads: sensitivity, the session's gain and drift, amplifier and noise. */
  private double[] read(Member member, SimulatedUnit unit, Spot spot, Complex[] pressure) {
    Session session = diary.of(spot.fixture(), member.turn());
    Draws noise = draws(Purpose.NOISE, member.specimen(), spot, Specimen.sideKey(spot.side()));
    double gainDb = unit.sensitivityDb() - session.correctionDb() + noise.gaussian(0, 0.05);
    double[] levels = new double[pressure.length];
    for (int i = 0; i < levels.length; i++) {
      double hz = bench.hz()[i];
      // Room rumble: the noise of a reading grows towards the lowest frequencies.
      double noiseDb = noise.gaussian(0, 0.03 + 0.8 / hz);
      double driftDb = diary.driftDb(spot.fixture(), member.turn(), hz);
      levels[i] = Math.rint((pressure[i].decibels() + gainDb + driftDb + noiseDb) * 100) / 100;
    }
    return levels;
  }

  private Response response(Specimen specimen, double[] levels) {
    double[] hz = bench.hz();
    boolean late = startsLate(specimen);
    int start = 0;
    while (late && hz[start] < LATE_START_HZ) {
      start++;
    }
    return Response.copyOf(
        Arrays.copyOfRange(hz, start, hz.length), Arrays.copyOfRange(levels, start, hz.length));
  }

  private boolean startsLate(Specimen specimen) {
    return Purpose.ROUTINE
        .draws(plan.seed(), specimen.kind().key(), specimen.number(), 1)
        .chance(plan.troubles().lateStart());
  }

  private CaptureEntry entry(Member member, FittedUnit fitted, Spot spot, String exclude) {
    String name = member.unit().name();
    String fixture = fitted.fixture().identity().name();
    String file =
        String.format(
            Locale.ROOT,
            "captures/%s/%s-%s-%d.%s",
            fixture,
            name.toLowerCase(Locale.ROOT).replace(' ', '-'),
            spot.side(),
            spot.seating(),
            dialect(member.specimen(), spot).extension());
    return new CaptureEntry(
        name,
        fixture,
        spot.side(),
        spot.seating(),
        file,
        diary.of(spot.fixture(), member.turn()).name(),
        exclude,
        startsLate(member.specimen()) ? "sweep from 20 Hz" : "",
        1);
  }

  private Dialect dialect(Specimen specimen, Spot spot) {
    if (plan.dialects() == SimulationPlan.Dialects.PLAIN) {
      return Dialect.PLAIN;
    }
    // A lab exports all seatings of a unit on a fixture alike.
    Draws draws =
        Purpose.ROUTINE.draws(
            plan.seed(), specimen.kind().key(), specimen.number(), 2, spot.fixture());
    return Dialect.ALL.get(draws.below(Dialect.ALL.size()));
  }

  private Draws draws(Purpose purpose, Specimen specimen, Spot spot, int side) {
    return purpose.draws(
        plan.seed(),
        specimen.kind().key(),
        specimen.number(),
        spot.fixture(),
        spot.seating(),
        side);
  }

  private static double degrees(double radians) {
    return Math.rint(Math.toDegrees(radians) * 10) / 10;
  }
}
