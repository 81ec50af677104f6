package org.twinrig.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.twinrig.PlannedStudy;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Unit;
import org.twinrig.regression.BandOutcome;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.screening.Screening;
import org.twinrig.screening.SealCheck;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Anchoring;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.ScreeningMode;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/**
 * Tries the finding of lost seals where it is known which seals were lost.
 *
 * <p>Every study is drawn twice from one seed, once with every seal good. What a lost seal cost is
 * the level of its capture below that of its good twin, and seatings scatter as the good ones do. A
 * lost seal counts when it cost at least 3 dB in the mean from 20 Hz to 100 Hz and more than three
 * standard deviations between good seatings of the kind on the fixture. Seals are lost on the new
 * fixture only.
 *
 * <p>The promise, at the limit in force: 95 % of the lost seals that count are found (85 % of those
 * that resonate at the knee), at most 1 % of sound captures are accused, and leaving out at least
 * halves the error of the mean transfer.
 *
 * @param units per kind, 3 or more
 * @param seatings per side and fixture, 2 or more
 * @param lostShare of the seatings on the new fixture, between 0 and 1
 * @param kneesDb what lost seals add about 190 Hz, dB, one or more different sizes: air in a leak
 *     and in the cup may resonate there
 */
record SealProof(int units, int seatings, double lostShare, List<Double> kneesDb)
    implements Proof<SealProof.Row> {
  private static final int POINTS = 180;
  private static final double BASS_TO_HZ = 100;
  private static final double LEAST_COST_DB = 3;
  private static final double SIGMAS = 3;
  private static final double KNEE_HZ = 190;
  private static final double KNEE_OCTAVES = 0.4;
  private static final double ERROR_TO_HZ = 200;
  private static final double IN_FORCE = 1;
  private static final double[] FACTORS = {0.5, 0.6, 0.7, 0.8, 0.9, IN_FORCE, 1.1, 1.25, 1.5, 2};
  private static final double LEAST_FOUND = 0.95;
  private static final double LEAST_RESONANT_FOUND = 0.85;
  private static final double MOST_ACCUSED = 0.01;
  private static final double MOST_ERROR_LEFT = 0.5;

  /** How it stands with a seal; slight: it was lost, but cost less, or stands out less. */
  private enum Seal {
    LOST,
    SLIGHT,
    SOUND
  }

  private record Scored(String kind, Seal seal, SealCheck.Score score) {}

  /**
   * Mean square error of the mean transfer below 200 Hz against the truth of the study's own units,
   * dB²: with every capture, with captures left out by the rules, and with every seal good.
   */
  private record Errors(String kind, double suggest, double exclude, double sound) {}

  private record Tally(List<Scored> captures, List<Errors> errors) {}

  /** How many captures, and how many of them are reported. */
  record Found(int captures, int reported) {
    private static Found of(List<Scored> all, Seal seal, double factor) {
      List<Scored> these = all.stream().filter(s -> s.seal == seal).toList();
      return new Found(
          these.size(), (int) these.stream().filter(s -> s.score.isLost(factor)).count());
    }

    private String text() {
      return reported + " of " + captures;
    }

    Optional<Double> share() {
      return captures == 0 ? Optional.empty() : Optional.of((double) reported / captures);
    }
  }

  /**
   * How well lost seals of one kind are found at one limit.
   *
   * @param kneeDb what lost seals add at the knee
   * @param limitFactor times the limit in force
   * @param lost lost seals that count
   * @param slight lost seals that do not
   * @param sound captures whose seal held
   * @param effect what leaving out does to the mean transfer, at the limit in force
   */
  record Row(
      String kind,
      double kneeDb,
      double limitFactor,
      Found lost,
      Found slight,
      Found sound,
      Optional<Effect> effect) {}

  /** Root mean square over the studies of what {@link Errors} holds, dB. */
  record Effect(double suggestDb, double excludeDb, double soundDb) {}

  @Override
  public List<Row> rows(Harness harness) {
    return kneesDb.stream().flatMap(kneeDb -> rows(harness, kneeDb).stream()).toList();
  }

  private List<Row> rows(Harness harness, double kneeDb) {
    List<Tally> studies =
        harness.each("lost seals, knee " + kneeDb + " dB", study -> study(harness, study, kneeDb));
    List<Row> rows = new ArrayList<>();
    List<String> kinds =
        studies.get(0).captures.stream().map(Scored::kind).distinct().sorted().toList();
    for (String kind : kinds) {
      List<Scored> scored =
          studies.stream()
              .flatMap(s -> s.captures.stream())
              .filter(c -> c.kind.equals(kind))
              .toList();
      List<Errors> errors =
          studies.stream()
              .flatMap(s -> s.errors.stream())
              .filter(e -> e.kind.equals(kind))
              .toList();
      for (double factor : FACTORS) {
        rows.add(
            new Row(
                kind,
                kneeDb,
                factor,
                Found.of(scored, Seal.LOST, factor),
                Found.of(scored, Seal.SLIGHT, factor),
                Found.of(scored, Seal.SOUND, factor),
                Optional.of(effect(errors)).filter(e -> factor == IN_FORCE)));
      }
    }
    return rows;
  }

  private static Effect effect(List<Errors> errors) {
    return new Effect(
        root(errors, Errors::suggest), root(errors, Errors::exclude), root(errors, Errors::sound));
  }

  private static double root(List<Errors> errors, ToDoubleFunction<Errors> meanSquare) {
    return Math.sqrt(errors.stream().mapToDouble(meanSquare).average().orElseThrow());
  }

  private Tally study(Harness harness, int index, double kneeDb) {
    SimulationPlan plan =
        harness
            .plan(POINTS, List.of(SimulatedKind.values()), units, seatings)
            .withSeed(harness.seed() + index);
    SimulatedStudy good = harness.draw(plan);
    SimulatedStudy leaking =
        harness.draw(
            PlannedStudy.troubled(
                plan, new SimulationPlan.Troubles(lostShare, lostShare, 1, 0, 0, 0)));
    Study study = good.declared(Settings.defaults().with(Setting.MODEL, PredictionModel.OFFSET));
    List<Capture> sound = good.captures();
    List<Capture> others = leaking.captures();
    List<Capture> captures = new ArrayList<>();
    List<Boolean> lost = new ArrayList<>();
    for (int k = 0; k < sound.size(); k++) {
      boolean onNew = sound.get(k).entry().fixture().equals(good.to().name());
      boolean leaks = onNew && others.get(k).entry().excludedByLab();
      lost.add(leaks);
      captures.add(
          leaks
              ? sound.get(k).withResponse(raised(others.get(k).response(), kneeDb))
              : sound.get(k));
    }
    Twins twins = new Twins(study, anchored(study, sound), anchored(study, captures), lost);
    return new Tally(twins.scored(), errors(twins, good));
  }

  /** A leak that resonates: a bell of so many dB at the knee. */
  private static Response raised(Response leak, double kneeDb) {
    double[] levels = new double[leak.size()];
    Arrays.setAll(
        levels,
        i -> {
          double away = StrictMath.log(leak.frequencyHz(i) / KNEE_HZ) / StrictMath.log(2);
          double widths = away / KNEE_OCTAVES;
          return leak.levelDb(i) + kneeDb * StrictMath.exp(-widths * widths);
        });
    return leak.withLevels(levels);
  }

  private static List<AnchoredCapture> anchored(Study study, List<Capture> captures) {
    return Anchoring.of(study.settings(), 1).apply(study.corrected(captures)).value();
  }

  /** The same captures with every seal good, and with some lost. */
  private record Twins(
      Study study,
      List<AnchoredCapture> sound,
      List<AnchoredCapture> captures,
      List<Boolean> lost) {

    List<Scored> scored() {
      Map<String, String> kinds =
          study.units().stream().collect(Collectors.toMap(Unit::name, Unit::kind));
      Map<CaptureEntry, SealCheck.Score> scores =
          SealCheck.scores(study, captures).stream()
              .collect(Collectors.toMap(SealCheck.Score::capture, s -> s));
      Map<String, Double> scatter = scatter(kinds);
      List<Scored> scored = new ArrayList<>();
      for (int k = 0; k < captures.size(); k++) {
        CaptureEntry entry = captures.get(k).capture().entry();
        SealCheck.Score score = scores.get(entry);
        if (score == null) {
          throw new IllegalStateException("a simulated capture reaches into the bass");
        }
        String kind = kinds.get(entry.unit());
        double costDb = bass(sound.get(k)) - bass(captures.get(k));
        boolean stands =
            costDb >= LEAST_COST_DB && costDb > SIGMAS * scatter.get(kind + "\n" + entry.fixture());
        Seal lostAs = stands ? Seal.LOST : Seal.SLIGHT;
        scored.add(new Scored(kind, lost.get(k) ? lostAs : Seal.SOUND, score));
      }
      return scored;
    }

    /** Standard deviation between good seatings, pooled over units, by kind and fixture. */
    private Map<String, Double> scatter(Map<String, String> kinds) {
      Map<String, Map<String, List<Double>>> groups = new LinkedHashMap<>();
      for (AnchoredCapture c : sound) {
        CaptureEntry e = c.capture().entry();
        groups
            .computeIfAbsent(kinds.get(e.unit()) + "\n" + e.fixture(), g -> new LinkedHashMap<>())
            .computeIfAbsent(e.unit() + "\n" + e.side(), u -> new ArrayList<>())
            .add(bass(c));
      }
      Map<String, Double> deviations = new HashMap<>();
      groups.forEach(
          (group, units) -> {
            double squares = 0;
            int freedom = 0;
            for (List<Double> levels : units.values()) {
              double mean = levels.stream().mapToDouble(l -> l).average().orElseThrow();
              squares += levels.stream().mapToDouble(l -> (l - mean) * (l - mean)).sum();
              freedom += levels.size() - 1;
            }
            deviations.put(group, Math.sqrt(squares / freedom));
          });
      return deviations;
    }

    private static double bass(AnchoredCapture capture) {
      Levels levels = capture.levels();
      return IntStream.range(0, levels.grid().size())
          .filter(b -> levels.grid().band(b).midHz() < BASS_TO_HZ && levels.has(b))
          .mapToDouble(levels::db)
          .average()
          .orElseThrow();
    }
  }

  private static List<Errors> errors(Twins twins, SimulatedStudy good) {
    Settings settings = twins.study.settings();
    Study exclude =
        twins.study.withSettings(settings.with(Setting.SCREENING, ScreeningMode.EXCLUDE));
    List<PairedUnits> all = paired(twins.study, twins.captures);
    List<PairedUnits> screened = paired(exclude, twins.captures);
    List<PairedUnits> sound = paired(twins.study, twins.sound);
    List<Errors> errors = new ArrayList<>();
    for (int k = 0; k < all.size(); k++) {
      Levels truth = truth(all.get(k), good, settings);
      errors.add(
          new Errors(
              all.get(k).kind(),
              meanSquare(all.get(k), truth),
              meanSquare(screened.get(k), truth),
              meanSquare(sound.get(k), truth)));
    }
    return errors;
  }

  private static List<PairedUnits> paired(Study study, List<AnchoredCapture> captures) {
    return new Pairing(study).pair(Screening.of(study, captures).accepted(), Unit.Role.FIT);
  }

  /** Mean over the study's own units of what each would show in expectation over good seatings. */
  private static Levels truth(PairedUnits kind, SimulatedStudy study, Settings settings) {
    double[] mean = new double[kind.grid().size()];
    for (String unit : kind.units()) {
      Levels own = study.trueUnitTransfer(unit, kind.grid(), settings.anchor());
      for (int b = 0; b < mean.length; b++) {
        mean[b] += own.level(b).orElse(Double.NaN) / kind.units().size();
      }
    }
    return Levels.copyOf(kind.grid(), mean);
  }

  private static double meanSquare(PairedUnits kind, Levels truth) {
    KindEstimate estimate = new TransferEstimator(0.95, PredictionModel.OFFSET, 1).fit(kind);
    double sum = 0;
    int count = 0;
    for (int b = 0; b < truth.grid().size(); b++) {
      OptionalDouble known = truth.level(b);
      if (truth.grid().band(b).midHz() < ERROR_TO_HZ
          && known.isPresent()
          && estimate.bands().get(b) instanceof BandOutcome.Fitted fitted) {
        double off = fitted.mean().meanDb() - known.getAsDouble();
        sum += off * off;
        count++;
      }
    }
    return sum / Math.max(1, count);
  }

  @Override
  public Table<Row> table() {
    return new Table<Row>()
        .text("kind", Row::kind)
        .number("knee_db", Row::kneeDb)
        .number("limit_factor", Row::limitFactor)
        .count("lost_seals", r -> r.lost.captures)
        .count("found", r -> r.lost.reported)
        .maybe("sensitivity", r -> r.lost.share())
        .count("slight_lost_seals", r -> r.slight.captures)
        .count("slight_found", r -> r.slight.reported)
        .count("sound_captures", r -> r.sound.captures)
        .count("accused", r -> r.sound.reported)
        .maybe("false_alarm_share", r -> r.sound.share())
        .maybe("rms_suggest_db", r -> r.effect.map(Effect::suggestDb))
        .maybe("rms_exclude_db", r -> r.effect.map(Effect::excludeDb))
        .maybe("rms_all_sound_db", r -> r.effect.map(Effect::soundDb));
  }

  @Override
  public List<String> broken(Row row) {
    List<String> broken = new ArrayList<>();
    if (row.effect.isEmpty()) {
      return broken; // nothing is promised of other limits
    }
    double least = row.kneeDb > 0 ? LEAST_RESONANT_FOUND : LEAST_FOUND;
    if (row.lost.share().orElse(1.0) < least) {
      broken.add(
          row.lost.text()
              + " lost seals are found, but "
              + Math.round(100 * least)
              + " % is promised");
    }
    if (row.sound.share().orElse(0.0) > MOST_ACCUSED) {
      broken.add(row.sound.text() + " sound captures are accused, but at most 1 % is promised");
    }
    if (row.effect.get().excludeDb > MOST_ERROR_LEFT * row.effect.get().suggestDb) {
      broken.add("leaving out does not halve the error of the mean transfer, as is promised");
    }
    return broken;
  }
}
