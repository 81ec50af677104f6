package org.twinrig.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;
import org.twinrig.capture.CalibratorClass;

/** IEC 60942:2017, Table 2, as transcribed in the reference table. */
class CalibratorClassTest {
  @Test
  void theLimitsAreThoseOfTheStandardAroundOneKilohertz() {
    List<Map<String, String>> rows =
        ReferenceTable.rows("acoustic_calibrator_iec60942_limits.csv").stream()
            .filter(r -> r.get("range_low_hz").equals("160"))
            .filter(r -> r.get("range_high_hz").equals("1250"))
            .toList();
    assertEquals(CalibratorClass.values().length, 2 * rows.size());
    for (Map<String, String> row : rows) {
      Optional<CalibratorClass> found = CalibratorClass.of(row.get("class"));
      assertTrue(found.isPresent(), row.toString());
      double limitDb = Double.parseDouble(row.get("level_limit_db"));
      assertEquals(limitDb, found.orElseThrow().levelLimitDb());
      assertFalse(found.orElseThrow().followsPressure());
      CalibratorClass corrected = CalibratorClass.of(row.get("class") + "/M").orElseThrow();
      assertEquals(limitDb, corrected.levelLimitDb());
      assertTrue(corrected.followsPressure());
    }
  }

  @Test
  void noOtherWordIsAClass() {
    for (String word : List.of("", "0", "3", "ls", "1 ", "class 1", "1.0", "1/C", "1/m")) {
      assertEquals(Optional.empty(), CalibratorClass.of(word), word);
    }
  }
}
