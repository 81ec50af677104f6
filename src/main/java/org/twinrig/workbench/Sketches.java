package org.twinrig.workbench;

import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.response.Levels;
import org.twinrig.study.AnchoredCapture;

/**
 * Small drawings for the margin: a seating over the unit's other seatings on the same fixture, so
 * that one that stands apart is seen. They have no axes; the figure of the unit has.
 */
public final class Sketches {
  private static final double WIDTH = 200;
  private static final double HEIGHT = 60;

  /** A deep notch would squeeze everything else. */
  private static final double LOWEST_DB = -30;

  private static final double LEAST_SPAN_DB = 10;

  private Sketches() {}

  /** A unit's seatings on a fixture that could be used: SVG path data by line of the table. */
  public static Map<Integer, String> of(StudyOutcome outcome, String unit, Fixture fixture) {
    double low = 0;
    double high = 0;
    Map<Integer, Levels> seatings = new TreeMap<>();
    for (AnchoredCapture capture : outcome.captures()) {
      CaptureEntry entry = capture.capture().entry();
      if (entry.unit().equals(unit) && entry.fixture().equals(fixture.name())) {
        seatings.put(entry.line(), capture.levels());
        for (int b = 0; b < capture.levels().grid().size(); b++) {
          double db = capture.levels().level(b).orElse(0);
          low = Math.min(low, Math.max(LOWEST_DB, db));
          high = Math.max(high, db);
        }
      }
    }
    double spanDb = Math.max(LEAST_SPAN_DB, high - low);
    Map<Integer, String> paths = new TreeMap<>();
    for (Map.Entry<Integer, Levels> seating : seatings.entrySet()) {
      paths.put(seating.getKey(), path(seating.getValue(), low, spanDb));
    }
    return paths;
  }

  private static String path(Levels levels, double lowDb, double spanDb) {
    StringBuilder path = new StringBuilder();
    boolean drawing = false;
    int bands = levels.grid().size();
    for (int b = 0; b < bands; b++) {
      if (levels.has(b)) {
        double x = WIDTH * (b + 0.5) / bands;
        double y = HEIGHT * (1 - (Math.max(lowDb, levels.db(b)) - lowDb) / spanDb);
        path.append(String.format(Locale.ROOT, "%s%.1f %.1f", drawing ? "L" : "M", x, y));
      }
      drawing = levels.has(b);
    }
    return path.toString();
  }
}
