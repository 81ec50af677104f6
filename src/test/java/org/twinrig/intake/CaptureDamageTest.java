package org.twinrig.intake;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.CharRange;
import net.jqwik.api.constraints.Chars;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.constraints.StringLength;
import org.twinrig.problem.UnusableInput;

/** Damage of any kind ends in a reading or a refusal, and one bad line is found wherever it is. */
class CaptureDamageTest {
  @Property
  void anyTextIsReadOrRefused(
      @ForAll
          @Chars({
            '.', ',', ';', '\t', ' ', '-', '+', 'e', '"', '#', '\n', '\r', 'H', 'z', 'd', 'B', '%',
            '\u00a0', '(', ')', '/', '\u2212'
          })
          @CharRange(from = '0', to = '9')
          @StringLength(max = 300)
          String text) {
    assertReadOrRefused(text.getBytes(StandardCharsets.UTF_8));
  }

  @Property
  void anyBytesAreReadOrRefused(@ForAll @Size(max = 200) byte[] bytes) {
    assertReadOrRefused(bytes);
  }

  private static void assertReadOrRefused(byte[] bytes) {
    try {
      Reading reading = CaptureBytes.read(bytes);
      assertTrue(reading.response().size() >= 2);
      assertFalse(reading.report().contains("NaN"));
    } catch (UnusableInput refusal) {
      assertTrue(refusal.getMessage().startsWith("capture.txt:"), refusal.getMessage());
      assertFalse(refusal.getMessage().contains("\n"), refusal.getMessage());
    }
  }

  @Property(tries = 300)
  void spoiledLevelIsFoundOnItsLine(
      @ForAll @IntRange(min = 2, max = 120) int points,
      @ForAll @IntRange(min = 0, max = 119) int spoiledPoint,
      @ForAll @IntRange(min = 0, max = 3) int dialect) {
    int spoiled = spoiledPoint % points;
    assertRefusedOnLine(spoiled + 2, rows(points, dialect), spoiled, row -> row + "x5");
    assertRefusedOnLine(spoiled + 2, rows(points, dialect), spoiled, row -> "20x" + row);
    assertRefusedOnLine(spoiled + 2, rows(points, dialect), spoiled, row -> row.substring(0, 3));
  }

  private static void assertRefusedOnLine(
      int line, List<String> rows, int spoiled, UnaryOperator<String> damage) {
    rows.set(spoiled, damage.apply(rows.get(spoiled)));
    String text = "Frequency;Level\n" + String.join("\n", rows) + "\n";
    UnusableInput refusal =
        assertThrows(UnusableInput.class, () -> CaptureBytes.read(text), () -> text);
    assertEquals(line, refusal.problems().get(0).line(), () -> refusal.getMessage() + "\n" + text);
  }

  private static List<String> rows(int points, int dialect) {
    String separator = List.of(";", "\t", ",", " ").get(dialect);
    List<String> rows = new ArrayList<>();
    for (int i = 0; i < points; i++) {
      rows.add((100 + 10 * i) + ".5" + separator + (80 + i % 7) + ".25");
    }
    return rows;
  }
}
