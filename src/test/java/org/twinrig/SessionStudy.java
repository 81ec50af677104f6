package org.twinrig;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * A small made-up study in which one unit was captured in every session, and whose drift is known:
 * ten sessions a fixture; in plate-04 the chain gained 0.8 dB after the calibrator was read, in
 * head-07 the microphone lost up to 1.5 dB towards the top.
 */
public final class SessionStudy {
  /** The check unit. */
  public static final String OAK = "Oak 1";

  /** Units besides the check unit. */
  public static final int UNITS = 8;

  private static final int SEATINGS = 3;
  private static final double SEATING_DB = 0.08;

  private final Path folder;
  private final int sessions;
  private final Drift drift;
  private final Random random = new Random(20260302);
  private final List<String> captures =
      new ArrayList<>(List.of("unit,fixture,side,seating,file,session"));

  /** What the chain added to every capture of a session. */
  @FunctionalInterface
  public interface Drift {
    /** In dB, by the session's name and the frequency in Hz. */
    double db(String session, double hz);
  }

  private SessionStudy(Path folder, int sessions, Drift drift) {
    this.folder = folder;
    this.sessions = sessions;
    this.drift = drift;
  }

  /** Writes the study; {@code yaml} goes to the end of study.yaml. */
  public static Path write(Path folder, int sessions, String yaml) throws IOException {
    return write(folder, sessions, yaml, SessionStudy::driftDb);
  }

  /** The same study with another drift. */
  public static Path write(Path folder, int sessions, String yaml, Drift drift) throws IOException {
    SessionStudy study = new SessionStudy(folder, sessions, drift);
    Files.createDirectories(folder.resolve("captures"));
    study.tables(yaml);
    return folder;
  }

  /** What the chain added to every capture of a session, dB. */
  public static double driftDb(String session, double hz) {
    double x = hz / 4000;
    return switch (session) {
      case "plate-04" -> 0.8;
      case "head-07" -> -1.5 * x * x / (1 + x * x);
      default -> 0;
    };
  }

  /** A gain of 1.5 dB in the plate's sessions from number 7 on: the last third of nine. */
  public static double stepDb(String session, double hz) {
    return session.compareTo("plate-07") >= 0 ? 1.5 : 0;
  }

  /** The mean transfer, dB, before any anchor. */
  public static double transferDb(double hz) {
    return 2 * Math.sin(Math.log(hz / 1000));
  }

  private void tables(String yaml) throws IOException {
    List<String> units = new ArrayList<>(List.of("unit,kind", OAK + ",open over-ear"));
    List<String> rows =
        new ArrayList<>(
            List.of("session,date,fixture,calibrator_nominal_db,calibrator_read_db,pressure_kpa"));
    for (int u = 1; u <= UNITS; u++) {
      units.add("Alder " + u + ",open over-ear");
    }
    for (String fixture : List.of("plate", "head")) {
      for (int s = 1; s <= sessions; s++) {
        String name = String.format(Locale.ROOT, "%s-%02d", fixture, s);
        rows.add(name + ",2026-03-" + (10 + s) + "," + fixture + ",94.0,93.9,101.2");
        session(fixture, s, name);
      }
    }
    Files.write(folder.resolve("units.csv"), units);
    Files.write(folder.resolve("sessions.csv"), rows);
    Files.write(folder.resolve("captures.csv"), captures);
    Files.writeString(
        folder.resolve("study.yaml"),
        String.join(
                "\n",
                "title: Plate to head in sessions",
                "from: plate",
                "to: head",
                "fixtures:",
                "  plate: { label: Flat-plate ear simulator, simulates_hz: [100, 10000], usable_hz: [20, 16000] }",
                "  head: { label: Head with soft cheeks, simulates_hz: [20, 20000] }",
                "units: units.csv",
                "captures: captures.csv",
                "sessions: sessions.csv",
                "bands: { per_octave: 3 }",
                yaml)
            + "\n");
  }

  /** The check unit, then the units whose turn it is. */
  private void session(String fixture, int session, String name) throws IOException {
    unit(OAK, 0, fixture, name, SEATINGS * (session - 1));
    for (int u = 1; u <= UNITS; u++) {
      int turn = fixture.equals("plate") ? (u + 1) % sessions : (u + 4) % sessions;
      if (turn + 1 == session) {
        unit("Alder " + u, u, fixture, name, 0);
      }
    }
  }

  private void unit(String unit, int number, String fixture, String session, int before)
      throws IOException {
    for (int s = 1; s <= SEATINGS; s++) {
      int seating = before + s;
      String file =
          String.format(
              Locale.ROOT,
              "captures/%s-%s-%d.csv",
              unit.toLowerCase(Locale.ROOT).replace(' ', '-'),
              fixture,
              seating);
      captures.add(String.join(",", unit, fixture, "M", "" + seating, file, session));
      Files.writeString(folder.resolve(file), curve(number, fixture, session));
    }
  }

  private String curve(int unit, String fixture, String session) {
    double level = random.nextGaussian() * SEATING_DB;
    double[] parts = random.doubles(6, -1, 1).toArray();
    StringBuilder text = new StringBuilder("Frequency (Hz),Level (dB)\n");
    for (double hz = 10; hz < 22_500; hz *= Math.pow(2, 1 / 12.0)) {
      double u = Math.log(hz / 1000);
      double seating = level;
      for (int k = 0; k < parts.length; k++) {
        seating += SEATING_DB * parts[k] * Math.cos((k + 1) * u / 2 + k);
      }
      double own = 0.3 * Math.sin(unit + 1.3 * u) * (fixture.equals("head") ? 1 : 0);
      double db =
          90
              + 5 * Math.cos(u + unit)
              + (fixture.equals("head") ? transferDb(hz) + own : 0)
              + drift.db(session, hz)
              + seating
              - 0.1;
      text.append(String.format(Locale.ROOT, "%.3f,%.3f%n", hz, db));
    }
    return text.toString();
  }
}
