package org.twinrig.simulation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.LongStream;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Session;
import org.twinrig.capture.Side;
import org.twinrig.response.Response;
import org.twinrig.simulation.SimulatedCapture.Trouble;

/** Measures a planned study: every unit, fixture, seating and side in the order of the tables. */
final class StudyDraw {
  private static final double LATE_START_HZ = 20;

  /** The number, in its kind, of the unit whose pads were changed. */
  private static final int OTHER_PADS = 6;

  private static final double PADS_OCTAVES = 0.35;

  private final SimulationPlan plan;
  private final List<Bench> benches;
  private final List<Member> members;
  private final Diary diary;

  StudyDraw(SimulationPlan plan, FixturePair fixtures) {
    this.plan = plan;
    this.benches = Bench.both(fixtures, plan.axis().frequenciesHz());
    this.members = Member.all(plan);
    this.diary = Diary.of(plan, members.stream().mapToInt(Member::turn).max().orElseThrow() + 1);
  }

  SimulatedStudy study() {
    List<SimulatedCapture> captures =
        members.parallelStream().flatMap(member -> captures(member).stream()).toList();
    List<SimulatedGraph> graphs = new CatalogueDraw(plan, benches.get(0), members.size()).graphs();
    return new SimulatedStudy(plan, benches, members, diary.sessions(), captures, graphs);
  }

  /** Where in the study a capture stands, and its line in captures.csv. */
  private record Spot(Member member, int fixture, Side side, int seating, int line) {}

  private List<SimulatedCapture> captures(Member member) {
    int line =
        2 + members.stream().takeWhile(m -> !m.equals(member)).mapToInt(this::captureCount).sum();
    List<SimulatedCapture> captures = new ArrayList<>();
    for (int fixture : member.fixtures()) {
      for (Side side : member.specimen().sides()) {
        Bench bench = benches.get(fixture);
        FittedUnit fitted = member.specimen().on(bench.fixture(), side, fixture);
        Chain chain = new Chain(bench, fitted);
        for (int seating = 1; seating <= plan.seatings(); seating++) {
          Spot spot = new Spot(member, fixture, side, seating, line + captures.size());
          captures.add(capture(fitted, chain, spot));
        }
      }
    }
    return captures;
  }

  private int captureCount(Member member) {
    return member.fixtures().size() * member.specimen().sides().size() * plan.seatings();
  }

  private SimulatedCapture capture(FittedUnit fitted, Chain chain, Spot spot) {
    // Both sides of a seating share its seal: it is one headband.
    Draws sealing = draws(Purpose.SEAL, spot, 0);
    FittedUnit.Seal seal = seal(sealing, spot);
    boolean noticed = seal == FittedUnit.Seal.LOST && sealing.chance(plan.troubles().noticed());
    Placement placement = spot.member.specimen().placement(spot.side, spot.fixture, spot.seating);
    Complex[] pressure = chain.pressure(fitted.seated(placement, seal));
    double[] levels = read(fitted.unit(), spot, pressure);
    double[] phases =
        Arrays.stream(pressure)
            .mapToDouble(p -> Math.rint(Math.toDegrees(p.argument()) * 10) / 10)
            .toArray();
    CaptureFormat format = format(spot);
    String exclude = noticed ? "seal lost, seen on screen" : "";
    CaptureEntry entry = entry(fitted, spot, format.extension(), exclude);
    double fromHz = startsLate(spot) ? LATE_START_HZ : 0;
    Response response = benches.get(0).response(levels, fromHz, Double.POSITIVE_INFINITY);
    String content = "made:" + entry.file() + ":" + Arrays.hashCode(levels);
    Capture capture = new Capture(entry, response, content);
    return new SimulatedCapture(capture, phases, planted(seal, spot), format);
  }

  private FittedUnit.Seal seal(Draws draws, Spot spot) {
    boolean first = spot.fixture == 1 && spot.seating == 1;
    double share = first ? plan.troubles().firstOnHeadLost() : plan.troubles().lost();
    return draws.chance(share) ? FittedUnit.Seal.LOST : FittedUnit.Seal.GOOD;
  }

  private Optional<Trouble> planted(FittedUnit.Seal seal, Spot spot) {
    if (seal == FittedUnit.Seal.LOST) {
      return Optional.of(Trouble.LOST_SEAL);
    }
    if (onOtherPads(spot)) {
      return Optional.of(Trouble.OTHER_PADS);
    }
    return diary.drifting(spot.fixture, spot.member.turn())
        ? Optional.of(Trouble.DRIFTING_SESSION)
        : Optional.empty();
  }

  /** What the lab reads: sensitivity, the session's gain and drift, amplifier and noise. */
  private double[] read(SimulatedUnit unit, Spot spot, Complex[] pressure) {
    Session session = diary.of(spot.fixture, spot.member.turn());
    Draws noise = draws(Purpose.NOISE, spot, Specimen.sideKey(spot.side));
    double gainDb = unit.sensitivityDb() - session.correctionDb() + noise.gaussian(0, 0.05);
    double[] levels = new double[pressure.length];
    for (int i = 0; i < levels.length; i++) {
      double hz = benches.get(0).hz()[i];
      double noiseDb = noiseDb(noise, hz);
      double driftDb = diary.driftDb(spot.fixture, spot.member.turn(), hz);
      double padsDb = onOtherPads(spot) ? otherPadsDb(hz) : 0;
      levels[i] =
          Math.rint((pressure[i].decibels() + gainDb + driftDb + padsDb + noiseDb) * 100) / 100;
    }
    return levels;
  }

  /** Room rumble: the noise of a reading grows towards the lowest frequencies. */
  static double noiseDb(Draws noise, double hz) {
    return noise.gaussian(0, 0.03 + 0.8 / hz);
  }

  private boolean onOtherPads(Spot spot) {
    return plan.falseClaims()
        && spot.fixture == 1
        && spot.member.specimen().number() == OTHER_PADS
        && spot.member.specimen().kind() == plan.groups().get(0).kind();
  }

  /** What other pads change: more bass, less presence, by decibels; common practice, no source. */
  static double otherPadsDb(double hz) {
    double bass = Math.log(hz / 180) / Math.log(2) / PADS_OCTAVES;
    double presence = Math.log(hz / 4200) / Math.log(2) / PADS_OCTAVES;
    return 3 * Math.exp(-bass * bass / 2) - 4 * Math.exp(-presence * presence / 2);
  }

  private CaptureEntry entry(FittedUnit fitted, Spot spot, String extension, String exclude) {
    String name = spot.member.unit().name();
    String fixture = fitted.fixture().identity().name();
    String file =
        String.format(
            Locale.ROOT,
            "captures/%s/%s-%s-%d.%s",
            fixture,
            name.toLowerCase(Locale.ROOT).replace(' ', '-'),
            spot.side,
            spot.seating,
            extension);
    return new CaptureEntry(
        name,
        fixture,
        spot.side,
        spot.seating,
        file,
        diary.of(spot.fixture, spot.member.turn()).name(),
        exclude,
        startsLate(spot) ? "sweep from 20 Hz" : "",
        "",
        spot.line);
  }

  private boolean startsLate(Spot spot) {
    return routine(spot, 1).chance(plan.troubles().lateStart());
  }

  private CaptureFormat format(Spot spot) {
    if (plan.formats() == SimulationPlan.Formats.PLAIN) {
      return CaptureFormat.PLAIN;
    }
    // A lab exports all seatings of a unit on a fixture alike.
    return CaptureFormat.ALL.get(routine(spot, 2, spot.fixture).below(CaptureFormat.ALL.size()));
  }

  private Draws routine(Spot spot, long... which) {
    Specimen specimen = spot.member.specimen();
    return Purpose.ROUTINE.draws(
        plan.seed(),
        LongStream.concat(
                LongStream.of(specimen.kind().key(), specimen.number()), LongStream.of(which))
            .toArray());
  }

  private Draws draws(Purpose purpose, Spot spot, int side) {
    Specimen specimen = spot.member.specimen();
    return purpose.draws(
        plan.seed(), specimen.kind().key(), specimen.number(), spot.fixture, spot.seating, side);
  }
}
