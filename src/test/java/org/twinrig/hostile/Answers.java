package org.twinrig.hostile;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.problem.Problem;
import org.twinrig.response.Response;
import org.twinrig.translation.Sketch;

/** What every answer of a reader must be, whatever the file held. */
final class Answers {
  /** Source, fault and remedy are cut at a thousand characters each. */
  private static final int LONGEST_MESSAGE = 3020;

  private Answers() {}

  /** Every problem is one short line that can be printed and names a line the file has. */
  static void checkProblems(List<Problem> problems, String source, byte[] content) {
    for (Problem problem : problems) {
      String text = problem.text();
      assertTrue(text.length() <= LONGEST_MESSAGE, () -> "too long: " + text.length());
      assertTrue(text.codePoints().noneMatch(Character::isISOControl), () -> "control: " + text);
      assertTrue(
          !problem.source().equals(source) || problem.line() <= lines(content),
          () -> "there is no such line: " + text);
    }
  }

  private static int lines(byte[] content) {
    int lines = 1;
    for (byte b : content) {
      lines += b == '\n' || b == '\r' ? 1 : 0;
    }
    return lines;
  }

  /** Looks into records, lists and maps: no number anywhere may be NaN or infinite. */
  static void checkFinite(Object value) {
    if (value instanceof Double || value instanceof Float) {
      assertTrue(Double.isFinite(((Number) value).doubleValue()), () -> "not finite: " + value);
    } else if (value instanceof OptionalDouble number) {
      number.ifPresent(Answers::checkFinite);
    } else if (value instanceof Optional<?> optional) {
      optional.ifPresent(Answers::checkFinite);
    } else if (value instanceof Iterable<?> all && !(value instanceof java.nio.file.Path)) {
      all.forEach(Answers::checkFinite);
    } else if (value instanceof Map<?, ?> map) {
      map.values().forEach(Answers::checkFinite);
    } else if (value instanceof Response curve) {
      checkCurve(curve);
    } else if (value instanceof Sketch sketch) {
      checkSketch(sketch);
    } else if (value instanceof Record row) {
      checkParts(row);
    }
  }

  private static void checkCurve(Response curve) {
    for (int k = 0; k < curve.size(); k++) {
      checkFinite(curve.frequencyHz(k));
      checkFinite(curve.levelDb(k));
    }
  }

  private static void checkSketch(Sketch sketch) {
    for (int band = 0; band < sketch.size(); band++) {
      if (sketch.has(band)) {
        checkFinite(sketch.db(band));
      }
    }
  }

  private static void checkParts(Record row) {
    for (RecordComponent part : row.getClass().getRecordComponents()) {
      try {
        part.getAccessor().setAccessible(true);
        checkFinite(part.getAccessor().invoke(row));
      } catch (ReflectiveOperationException e) {
        throw new LinkageError("a part of " + row.getClass() + " cannot be seen", e);
      }
    }
  }

  static void checkSame(byte[] expected, byte[] actual, int length) {
    assertFalse(
        java.util.Arrays.mismatch(expected, 0, length, actual, 0, length) >= 0,
        "bytes were changed that should have stayed");
  }
}
