package org.twinrig.study;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class StudyTextTest {
  private static final String TEXT =
      """
      # By the lab.
      title: Plate to head   # as reports print it
      tolerance: { reliable_db: 1.5, caution_db: 3 } # agreed in spring
      bands:
        # a comment of its own
        per_octave: 12

      # what we know
      zones:
        - { name: canal, fixture: plate, from_hz: 8000, to_hz: 10000 }

      # the end
      seed: 1
      """;

  private static String changed(String key, String value) {
    return new StudyText(TEXT).with(key, value).text();
  }

  @Test
  void readsValues() {
    StudyText text = new StudyText(TEXT);
    assertEquals(Optional.of("1.5"), text.value("tolerance.reliable_db"));
    assertEquals(Optional.of("{ per_octave: 12 }"), text.value("bands"));
    assertEquals(Optional.empty(), text.value("bands.from_hz"));
    assertEquals(Optional.empty(), text.value("anchor"));
    assertEquals(Optional.empty(), text.value("title.from_hz"));
  }

  @Test
  void changesOneValueAndNothingElse() {
    assertEquals(
        TEXT.replace("caution_db: 3 }", "caution_db: 2.5 }"),
        changed("tolerance.caution_db", "2.5"));
    assertEquals(TEXT.replace("seed: 1\n", "seed: 7\n"), changed("seed", "7"));
    assertEquals(TEXT.replace("per_octave: 12", "per_octave: 6"), changed("bands.per_octave", "6"));
  }

  @Test
  void addsAKeyToItsGroupOrAtTheEnd() {
    assertEquals(
        TEXT.replace("caution_db: 3 }", "caution_db: 3, equivalence_db: 0.4 }"),
        changed("tolerance.equivalence_db", "0.4"));
    assertEquals(
        TEXT.replace("per_octave: 12\n", "per_octave: 12\n  from_hz: 50\n"),
        changed("bands.from_hz", "50"));
    assertEquals(TEXT + "anchor: { at_hz: 1000 }\n", changed("anchor", "{ at_hz: 1000 }"));
    assertEquals(TEXT + "screening: { apply: exclude }\n", changed("screening.apply", "exclude"));
  }

  @Test
  void writesAListAnewAndKeepsTheCommentsAround() {
    Map<String, Object> keys = new LinkedHashMap<>();
    keys.put("name", "ear: canal");
    keys.put("fixture", "head");
    keys.put("from_hz", 7000.0);
    keys.put("to_hz", "");
    String zone = StudyText.flow(keys);
    assertEquals("{ name: \"ear: canal\", fixture: head, from_hz: 7000, to_hz:  }", zone);
    assertEquals(
        TEXT.replace(
            "zones:\n  - { name: canal, fixture: plate, from_hz: 8000, to_hz: 10000 }",
            "zones: [\n  " + zone + "\n  ]"),
        new StudyText(TEXT).withList("zones", List.of(zone)).text());
    assertEquals(
        TEXT.replace(
            "zones:\n  - { name: canal, fixture: plate, from_hz: 8000, to_hz: 10000 }",
            "zones: []"),
        new StudyText(TEXT).withList("zones", List.of()).text());
  }

  @Test
  void aCommentBetweenKeyAndBlockStays() {
    assertEquals(
        TEXT.replace(
            "bands:\n  # a comment of its own\n  per_octave: 12",
            "bands:\n  # a comment of its own\n  { per_octave: 3 }"),
        changed("bands", "{ per_octave: 3 }"));
  }

  @Test
  void aValueCannotBecomeMoreThanAValue() {
    assertEquals(
        TEXT.replace("seed: 1\n", "seed: \"1\\x0afrom: x\"\n"), changed("seed", "1\nfrom: x"));
    assertEquals(
        TEXT.replace("reliable_db: 1.5", "reliable_db: \"1, seed: 9\""),
        changed("tolerance.reliable_db", "1, seed: 9"));
    assertEquals(TEXT.replace("seed: 1\n", "seed: { a: 1 }\n"), changed("seed", "{ a: 1 } # \""));
    assertEquals(TEXT.replace("seed: 1\n", "seed: \"{ a: 1\"\n"), changed("seed", "{ a: 1"));
  }

  @Test
  void lettersOutsideTheBasicPlaneDoNotShiftPlaces() {
    assertEquals(
        "title: \uD83C\uDFA7 \u00e4\nseed: 2\n",
        new StudyText("title: \uD83C\uDFA7 \u00e4\nseed: 1\n").with("seed", "2").text());
  }
}
