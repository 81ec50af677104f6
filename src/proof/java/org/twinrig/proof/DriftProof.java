package org.twinrig.proof;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.twinrig.capture.Calibrator;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Session;
import org.twinrig.evidence.ClopperPearson;
import org.twinrig.response.Response;
import org.twinrig.screening.FixtureDrift;
import org.twinrig.screening.Screening;
import org.twinrig.screening.SessionReview;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.study.Anchoring;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/**
 * Tries the control charts of the check unit where it is known which sessions drifted.
 *
 * <p>One unit is seated three times in every session on either fixture; the calibrator's coupling
 * adds a gain of its own to every session, alike at all frequencies. Drift is planted on the new
 * fixture only.
 *
 * <p>The promise: of studies in which nothing drifts at most 5 % name a session, as far as the
 * count of studies can tell.
 *
 * @param sessions on each fixture, one or more different numbers
 * @param kinds of the check unit
 */
record DriftProof(List<Integer> sessions, List<SimulatedKind> kinds)
    implements Proof<DriftProof.Row> {
  private static final double CONFIDENCE = 0.95;
  private static final double MOST_ACCUSED = 0.05;
  private static final int POINTS = 140;
  private static final int SEATINGS = 3;

  /** What coupling a calibrator anew moves its reading by; common practice, no source. */
  private static final double COUPLING_DB = 0.05;

  private static final double MICROPHONE_HZ = 4000;
  private static final long COUPLING = 1;

  /** What happens to the chain of the new fixture. */
  enum Drift {
    STEADY("none"),
    ONE_SESSION("gain in one session"),
    LAST_THIRD("gain in the last third"),
    MICROPHONE("loss above 4 kHz in the last third");

    private final String word;

    Drift(String word) {
      this.word = word;
    }

    /** Whether it is there in a session, from 0, of so many. */
    private boolean in(int session, int of) {
      return switch (this) {
        case STEADY -> false;
        case ONE_SESSION -> session == of / 2;
        case LAST_THIRD, MICROPHONE -> session >= of - of / 3;
      };
    }

    private double db(double sizeDb, double hz) {
      double x = hz / MICROPHONE_HZ;
      return this == MICROPHONE ? -sizeDb * x * x / (1 + x * x) : sizeDb;
    }
  }

  /** A drift of a size in dB. */
  private record Planted(Drift drift, double sizeDb) {
    private static final List<Planted> ALL =
        Stream.concat(
                Stream.of(new Planted(Drift.STEADY, 0)),
                Arrays.stream(Drift.values())
                    .skip(1)
                    .flatMap(d -> Stream.of(0.5, 1.0, 2.0).map(db -> new Planted(d, db))))
            .toList();
  }

  /** Whether a session that drifted is named, and one that did not. */
  private record Named(boolean drifting, boolean steady) {}

  /**
   * What became of one drift; shares of studies.
   *
   * @param sessions on each fixture
   * @param found studies that name a session that drifted; nothing where none did
   * @param accused studies that name a session that did not
   */
  record Row(
      String kind,
      int sessions,
      String drift,
      double sizeDb,
      Optional<ClopperPearson> found,
      ClopperPearson accused) {}

  @Override
  public List<Row> rows(Harness harness) {
    List<Row> rows = new ArrayList<>();
    for (SimulatedKind kind : kinds) {
      for (int count : sessions) {
        List<Map<Planted, Named>> studies =
            harness.each(
                kind.label() + ", " + count + " sessions",
                study -> study(harness, kind, count, study));
        for (Planted planted : Planted.ALL) {
          List<Named> named = studies.stream().map(s -> s.get(planted)).toList();
          rows.add(
              new Row(
                  kind.label(),
                  count,
                  planted.drift.word,
                  planted.sizeDb,
                  Optional.of(share(named.stream().filter(Named::drifting).count(), named.size()))
                      .filter(s -> planted.drift != Drift.STEADY),
                  share(named.stream().filter(Named::steady).count(), named.size())));
        }
      }
    }
    return rows;
  }

  private static ClopperPearson share(long hits, int studies) {
    return ClopperPearson.of((int) hits, studies, CONFIDENCE);
  }

  private static Map<Planted, Named> study(
      Harness harness, SimulatedKind kind, int count, int study) {
    SimulatedStudy drawn =
        harness.draw(harness.plan(POINTS, List.of(kind), 1, count * SEATINGS, count, study));
    Settings settings = Settings.defaults();
    List<Capture> even = drawn.declared(settings).corrected(drawn.captures());
    return Planted.ALL.stream()
        .collect(
            Collectors.toMap(
                planted -> planted,
                planted -> {
                  List<Capture> captures =
                      even.stream()
                          .map(c -> held(c, drawn, planted, count, harness.seed() + study))
                          .toList();
                  return named(review(drawn, captures, count), planted, count);
                }));
  }

  /** A capture in its session: {@link #SEATINGS} in a row. */
  private static Capture held(
      Capture capture, SimulatedStudy drawn, Planted planted, int count, long seed) {
    CaptureEntry e = capture.entry();
    int number = (e.seating() - 1) / SEATINGS;
    boolean onNew = e.fixture().equals(drawn.to().name());
    double gainDb =
        Chance.of(seed, COUPLING, onNew ? 1 : 0, count, number).gaussian(0, COUPLING_DB);
    boolean drifts = onNew && planted.drift.in(number, count);
    Response r = capture.response();
    double[] levels = new double[r.size()];
    Arrays.setAll(
        levels,
        i ->
            r.levelDb(i)
                + gainDb
                + (drifts ? planted.drift.db(planted.sizeDb, r.frequencyHz(i)) : 0));
    CaptureEntry own =
        new CaptureEntry(
            e.unit(),
            e.fixture(),
            e.side(),
            e.seating(),
            e.file(),
            name(e.fixture(), number),
            "",
            "",
            "",
            e.line());
    return new Capture(own, r.withLevels(levels), capture.sha256());
  }

  private static String name(String fixture, int number) {
    return fixture + " " + number;
  }

  private static SessionReview review(SimulatedStudy drawn, List<Capture> captures, int count) {
    List<Session> sessions = new ArrayList<>();
    for (String fixture : List.of(drawn.from().name(), drawn.to().name())) {
      for (int number = 0; number < count; number++) {
        String date = LocalDate.of(2026, 3, 1).plusDays(number).toString();
        OptionalDouble none = OptionalDouble.empty();
        Calibrator level = Calibrator.LEVEL_CONTROLLED;
        sessions.add(
            new Session(
                name(fixture, number), date, fixture, 94, 94, level, none, none, "", "", 1));
      }
    }
    String unit = drawn.units().get(0).name();
    Study like = drawn.declared(Settings.defaults().with(Setting.CHECK_UNIT, Optional.of(unit)));
    Study study =
        new Study(
            like.folder(),
            like.title(),
            like.from(),
            like.to(),
            like.units(),
            captures.stream().map(Capture::entry).toList(),
            sessions,
            like.catalogue(),
            like.settings(),
            like.capturesFolder(),
            like.inputs(),
            like.references());
    Screening screening =
        Screening.of(study, Anchoring.of(study.settings(), 1).apply(captures).value());
    return SessionReview.of(study, captures, screening).orElseThrow();
  }

  private static Named named(SessionReview review, Planted planted, int count) {
    FixtureDrift now = review.fixtures().get(1);
    Set<String> drifting =
        IntStream.range(0, count)
            .filter(s -> planted.drift.in(s, count))
            .mapToObj(s -> name(now.fixture(), s))
            .collect(Collectors.toSet());
    Set<String> named =
        review.fixtures().stream()
            .flatMap(f -> f.outOfControl().stream())
            .map(FixtureDrift.OutOfControl::session)
            .collect(Collectors.toCollection(HashSet::new));
    boolean found = named.stream().anyMatch(drifting::contains);
    named.removeAll(drifting);
    return new Named(found, !named.isEmpty());
  }

  @Override
  public Table<Row> table() {
    return new Table<Row>()
        .text("kind", Row::kind)
        .count("sessions", Row::sessions)
        .text("drift", Row::drift)
        .number("drift_db", Row::sizeDb)
        .count("studies", r -> r.accused.trials())
        .share("found", Row::found)
        .share("steady_accused", r -> Optional.of(r.accused));
  }

  @Override
  public List<String> broken(Row row) {
    return row.found.isEmpty() && row.accused.low() > MOST_ACCUSED
        ? List.of("a steady check unit is accused in more than 5 % of studies")
        : List.of();
  }
}
