package org.twinrig.screening;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Session;
import org.twinrig.response.Anchor;
import org.twinrig.response.BandLevels;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.study.Study;

/** Sorts the accepted captures of the check unit into sessions, on octaves and not anchored. */
final class CheckCaptures {
  static final BandGrid OCTAVES = BandGrid.covering(31.5, 16_000, 1);

  /**
   * Few captures cover the octave at 16 kHz up to its edge at 22.4 kHz. Its lower two third octaves
   * stand for it, 11.2 kHz to 17.8 kHz, in every capture alike.
   */
  static final Band TOP = OCTAVES.band(OCTAVES.size() - 1);

  private static final BandGrid TOP_THIRDS = BandGrid.covering(12_500, 16_000, 3);

  /** Where the level is taken when the study has no anchor of its own. */
  private static final Anchor LEVEL = new Anchor.Range(300, 1000);

  private static final int LEVEL_PER_OCTAVE = 12;

  private final Study study;
  private final List<Capture> captures;

  /**
   * The check unit's captures.
   *
   * @param corrected every capture of the study, corrected for its calibrator
   * @param accepted those that screening let pass
   */
  CheckCaptures(Study study, List<Capture> corrected, Collection<CaptureEntry> accepted) {
    this.study = study;
    Set<CaptureEntry> counting = new HashSet<>(accepted);
    String unit = study.settings().sessions().checkUnit().orElseThrow();
    this.captures =
        corrected.stream()
            .filter(c -> c.entry().unit().equals(unit) && counting.contains(c.entry()))
            .toList();
  }

  /** Where the level of a capture is taken. */
  static Anchor level(Anchor ofStudy) {
    return ofStudy instanceof Anchor.None ? LEVEL : ofStudy;
  }

  /** The sessions of a fixture in which the unit was captured, in the order of the table. */
  List<CheckSession> on(String fixture) {
    List<CheckSession> sessions = new ArrayList<>();
    for (Session session : study.sessions()) {
      List<Capture> own =
          captures.stream()
              .filter(c -> c.entry().fixture().equals(fixture))
              .filter(c -> c.entry().session().equals(session.name()))
              .toList();
      CheckSession seated = seated(session.name(), own);
      if (seated.seatings() > 0) {
        sessions.add(seated);
      }
    }
    return sessions;
  }

  /** Sides of a seating are averaged in dB, as everywhere. */
  private CheckSession seated(String session, List<Capture> own) {
    Map<Integer, List<Double>> levels = new TreeMap<>();
    Map<Integer, List<Levels>> octaves = new TreeMap<>();
    Anchor anchor = level(study.settings().anchor());
    for (Capture c : own) {
      OptionalDouble level = anchor.levelOf(c.response(), LEVEL_PER_OCTAVE);
      if (level.isPresent()) {
        int seating = c.entry().seating();
        levels.computeIfAbsent(seating, s -> new ArrayList<>()).add(level.getAsDouble());
        octaves.computeIfAbsent(seating, s -> new ArrayList<>()).add(octaves(c.response()));
      }
    }
    return new CheckSession(
        session,
        levels.values().stream().map(CheckCaptures::mean).toList(),
        octaves.values().stream().map(CheckCaptures::meanCurve).toList());
  }

  static Levels octaves(Response response) {
    Levels octaves = BandLevels.of(response, OCTAVES);
    Levels thirds = BandLevels.of(response, TOP_THIRDS);
    int top = OCTAVES.size() - 1;
    double[] db = new double[OCTAVES.size()];
    Arrays.setAll(db, b -> octaves.level(b).orElse(Double.NaN));
    db[top] =
        (thirds.level(0).orElse(Double.NaN) + thirds.level(1).orElse(Double.NaN))
            / TOP_THIRDS.size();
    return Levels.copyOf(OCTAVES, db);
  }

  private static double mean(List<Double> values) {
    return values.stream().mapToDouble(v -> v).average().orElseThrow();
  }

  /** An octave counts only when every side has it: sides differ too much to stand for another. */
  private static Levels meanCurve(List<Levels> sides) {
    double[] means = new double[OCTAVES.size()];
    for (int b = 0; b < means.length; b++) {
      double sum = 0;
      for (Levels side : sides) {
        sum += side.level(b).orElse(Double.NaN);
      }
      means[b] = sum / sides.size();
    }
    return Levels.copyOf(OCTAVES, means);
  }
}
