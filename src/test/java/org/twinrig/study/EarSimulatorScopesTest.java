package org.twinrig.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.twinrig.ReferenceTable;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.Fixture;

/**
 * The ranges of ear simulators in the worked studies and in the manual are those of the scopes of
 * their standards, in the reference table acoustic_facts.csv. The two standards with one range are
 * couplers: they simulate no ear.
 */
class EarSimulatorScopesTest {
  private static final Path STUDIES = Path.of("studies");
  private static final Map<String, String> FACTS = new HashMap<>();

  static {
    ReferenceTable.rows("acoustic_facts.csv")
        .forEach(row -> FACTS.put(row.get("fact"), row.get("value")));
  }

  private static Optional<String> simulates(String standard) {
    return between(fact(standard, "_simulates_from"), fact(standard, "_simulates_to"));
  }

  private static Optional<String> usable(String standard) {
    return between(fact(standard, "_coupler_down_to"), fact(standard, "_coupler_up_to"))
        .or(() -> fact(standard, "_range").map(both -> "[" + both.replace(" to ", ", ") + "]"));
  }

  private static Optional<String> between(Optional<String> from, Optional<String> to) {
    return from.map(f -> "[" + f + ", " + to.orElseThrow() + "]");
  }

  private static Optional<String> fact(String standard, String what) {
    String end = standard.replace("IEC ", "_").replace('-', '_') + what;
    return FACTS.entrySet().stream()
        .filter(e -> e.getKey().endsWith(end))
        .map(Map.Entry::getValue)
        .findAny();
  }

  private static Optional<String> written(Optional<FrequencyRange> range) {
    return range.map(r -> "[%.0f, %.0f]".formatted(r.fromHz(), r.toHz()));
  }

  @Test
  void workedStudiesSayWhatTheStandardsSay() throws Exception {
    int held = 0;
    for (String folder :
        List.of(
            "plate-to-head",
            "planted-no",
            "published-couplers/insert",
            "published-couplers/supra-aural")) {
      Study study = StudyReader.read(STUDIES.resolve(folder)).value();
      for (Fixture fixture : List.of(study.from(), study.to())) {
        String standard = fixture.earSimulator();
        if (standard.startsWith("IEC")) {
          assertTrue(usable(standard).isPresent(), "no fact about " + standard);
          assertEquals(simulates(standard), written(fixture.simulates()), folder);
          assertEquals(usable(standard), written(fixture.usable()), folder);
          held++;
        }
      }
    }
    assertEquals(6, held);
  }

  @Test
  void theManualSaysWhatTheStandardsSay() throws Exception {
    List<MatchResult> rows =
        Pattern.compile(
                "^\\| (IEC 60318-\\d):\\d{4}[^|]*\\| (?:`(.*?)`|none) \\| (?:`(.*?)`|not stated) \\|"
                    + " scope page \\|$",
                Pattern.MULTILINE)
            .matcher(Files.readString(STUDIES.resolve("README.md")))
            .results()
            .toList();
    for (MatchResult row : rows) {
      assertEquals(simulates(row.group(1)), Optional.ofNullable(row.group(2)), row.group());
      assertEquals(usable(row.group(1)), Optional.ofNullable(row.group(3)), row.group());
    }
    assertEquals(5, rows.size());
  }
}
