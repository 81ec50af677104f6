package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;

class SketchesTest {
  @TempDir Path folder;

  @Test
  void everySeatingIsDrawnAmongTheOthersOfItsFixture() throws Exception {
    Browser.write(folder.resolve("study"));
    StudyOutcome outcome =
        new StudySession(folder.resolve("study"), List.of(), 1, study -> {})
            .snapshot()
            .outcome()
            .orElseThrow();
    CaptureEntry first = outcome.study().captures().get(0);
    Map<Integer, String> sketches = Sketches.of(outcome, first.unit(), outcome.study().from());
    String own = sketches.get(first.line());
    String all = String.join("", sketches.values());
    assertTrue(own.matches("M[0-9.]+ [0-9.]+(L[0-9.]+ [0-9.]+)+"), own);
    assertEquals(3, sketches.size());
    assertEquals(3, all.chars().filter(c -> c == 'M').count());
    for (String number : all.substring(1).split("[ML ]", -1)) {
      double at = Double.parseDouble(number);
      assertTrue(at >= 0 && at <= 200, number);
    }
    assertEquals(Map.of(), Sketches.of(outcome, "no unit", outcome.study().to()));
  }
}
