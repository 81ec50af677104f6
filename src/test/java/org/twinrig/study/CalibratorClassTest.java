package org.twinrig.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
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
    assertEquals(CalibratorClass.values().length, rows.size());
    for (Map<String, String> row : rows) {
      Optional<CalibratorClass> found = CalibratorClass.of(row.get("class"));
      assertTrue(found.isPresent(), row.toString());
      assertEquals(
          Double.parseDouble(row.get("level_limit_db")), found.orElseThrow().levelLimitDb());
    }
  }

  @Test
  void noOtherWordIsAClass() {
    for (String word : List.of("", "0", "3", "ls", "1 ", "class 1", "1.0")) {
      assertEquals(Optional.empty(), CalibratorClass.of(word), word);
    }
  }
}
