package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.twinrig.study.Setting;
import org.twinrig.study.StudyReader;

/** Settings are written alone, and refused in the words of the command line. */
class WorkbenchSettingsTest extends OpenWorkbench {
  @Test
  void aSettingIsWrittenAloneAndItsEffectShown() throws Exception {
    String yaml = "# ours\n" + browser.content("study.yaml") + "# the end\n";
    Files.writeString(browser.file("study.yaml"), yaml);
    browser.post("/reload", Map.of());
    HttpResponse<String> done =
        browser.post("/settings", Map.of("revision", "2", "tolerance.reliable_db", "0.4"));
    assertEquals(303, done.statusCode(), done.body());
    assertEquals(yaml + "tolerance: { reliable_db: 0.4 }\n", browser.content("study.yaml"));
    String page = browser.get("/study").body();
    assertTrue(page.contains("Settings changed: tolerance.reliable_db 0.4."), page);
    assertTrue(page.contains(": reliable before, caution now."), page);
  }

  @Test
  void aWrongSettingIsRefusedInTheWordsOfTheCommandLine() throws Exception {
    byte[] before = Files.readAllBytes(browser.file("study.yaml"));
    HttpResponse<String> refused =
        browser.post(
            "/settings",
            Map.of("revision", "1", "tolerance.reliable_db", "1,5", "bands.per_octave", "7"));
    assertEquals(400, refused.statusCode());
    assertArrayEquals(before, Files.readAllBytes(browser.file("study.yaml")));
    // The same mistakes, written by hand and read as every command reads them.
    String yaml =
        browser.content("study.yaml").replace("per_octave: 6", "per_octave: 7")
            + "tolerance: { reliable_db: \"1,5\" }\n";
    Files.writeString(browser.file("by-hand.yaml"), yaml);
    List<String> said = new ArrayList<>();
    try {
      StudyReader.read(browser.file("by-hand.yaml"));
    } catch (org.twinrig.problem.UnusableInput e) {
      e.problems().forEach(p -> said.add(p.text().replace("by-hand.yaml", "study.yaml")));
    }
    assertEquals(2, said.size(), () -> said.toString());
    for (String problem : said) {
      assertTrue(refused.body().contains("<li>" + escaped(problem) + "</li>"), problem);
    }
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }

  /** The names of the constants in lower case are what study.yaml takes: see its reader. */
  @Test
  void aValueOfAClosedListIsChosen() throws Exception {
    String page = browser.get("/settings").body();
    assertEquals(List.of("suggest", "exclude"), choices(page, "screening.apply"));
    assertEquals(List.of("average", "offset"), choices(page, "model"));
    assertEquals(List.of("report", "correct"), choices(page, "drift"));
    assertEquals(List.of("1", "3", "6", "12", "24", "48"), choices(page, "bands.per_octave"));
    for (String chosen : List.of("offset", "exclude", "report", "6")) {
      assertTrue(page.contains("<option value=\"" + chosen + "\" selected>"), chosen);
    }
    // Sent as it is shown, nothing is written.
    String yaml = browser.content("study.yaml");
    Map<String, String> shown =
        Map.of(
            "revision", "1",
            "model", "offset",
            "drift", "report",
            "bands.per_octave", "6",
            "screening.apply", "exclude");
    browser.post("/settings", shown);
    assertEquals(yaml, browser.content("study.yaml"));
    assertEquals(
        303, browser.post("/settings", Map.of("revision", "1", "model", "average")).statusCode());
    assertEquals(yaml.replace("model: offset", "model: average"), browser.content("study.yaml"));
    HttpResponse<String> refused =
        browser.post("/settings", Map.of("revision", "2", "drift", "correct"));
    assertEquals(400, refused.statusCode());
    assertTrue(refused.body().contains("name the `check_unit`"), refused.body());
    assertTrue(refused.body().contains("<option value=\"correct\" selected>"), refused.body());
  }

  private static List<String> choices(String page, String key) {
    Matcher field =
        Pattern.compile("(?s)<select id=\"f-" + Pattern.quote(key) + "\".*?</select>")
            .matcher(page);
    assertTrue(field.find(), key);
    return Pattern.compile("<option value=\"([^\"]*)\"")
        .matcher(field.group())
        .results()
        .map(r -> r.group(1))
        .toList();
  }

  /** YAML allows the same word between quotes; the page must not take it for another. */
  @Test
  void aChoiceBetweenQuotesIsNotChangedByLookingAtIt() throws Exception {
    String yaml = browser.content("study.yaml").replace("model: offset", "model: \"offset\"");
    Files.writeString(browser.file("study.yaml"), yaml);
    browser.post("/reload", Map.of());
    String page = browser.get("/settings").body();
    Matcher chosen =
        Pattern.compile("(?s)<select id=\"f-model\".*?<option value=\"([^>]*)\" selected>")
            .matcher(page);
    assertTrue(chosen.find(), page);
    String value = chosen.group(1).replaceAll("(?s).*value=\"", "").replace("&#34;", "\"");
    browser.post("/settings", Map.of("revision", "2", "model", value));
    assertEquals(yaml, browser.content("study.yaml"));
  }

  /** Every key but the zones, which have rows, is one field or several. */
  @Test
  void everySettingHasAField() throws Exception {
    String page = browser.get("/settings").body();
    for (Setting<?> setting : Setting.ALL) {
      assertEquals(setting == Setting.ZONES, setting.fields().isEmpty(), setting.key());
      for (Setting.Field field : setting.fields()) {
        assertTrue(page.contains(" id=\"f-" + field.key() + "\""), field.key());
      }
    }
    String standard = "value=\"{ from_hz: 100, to_hz: 10000, lost_octaves: 1 }\"";
    assertTrue(page.contains(standard), page);
    String yaml = browser.content("study.yaml");
    Map<String, String> sent =
        Map.of(
            "revision", "1",
            "check_unit", "",
            "publishing", "{ from_hz: 100, to_hz: 10000, lost_octaves: 1 }",
            "resonance_search_hz", "[4000, 11000]");
    assertEquals(303, browser.post("/settings", sent).statusCode());
    assertEquals(yaml + "resonance_search_hz: [4000, 11000]\n", browser.content("study.yaml"));
    HttpResponse<String> refused =
        browser.post("/settings", Map.of("revision", "2", "publishing", "often"));
    assertEquals(400, refused.statusCode());
    assertTrue(refused.body().contains("`publishing` is `often`"), refused.body());
  }

  @Test
  void zonesAreDeclaredInTheirRows() throws Exception {
    HttpResponse<String> done =
        browser.post(
            "/settings",
            Map.of(
                "revision", "1",
                "zone-0-name", "ear: canal",
                "zone-0-fixture", "plate",
                "zone-0-from", "3000",
                "zone-0-to", "3500"));
    assertEquals(303, done.statusCode(), done.body());
    assertTrue(
        browser
            .content("study.yaml")
            .contains("{ name: \"ear: canal\", fixture: plate, from_hz: 3000, to_hz: 3500 }"));
    String page = browser.get("/zones?hz=3150").body();
    assertTrue(page.contains("Marked because the lab declared: ear: canal."), page);
  }

  @Test
  void theWholeTextIsEditedByteForByte() throws Exception {
    String yaml = browser.content("study.yaml").replace("\n", "\r\n");
    Files.writeString(browser.file("study.yaml"), yaml);
    browser.post("/reload", Map.of());
    String page = browser.get("/settings-text").body();
    assertTrue(page.contains("title: Plate to head"), page);
    assertEquals(
        303, browser.post("/settings-text", Map.of("revision", "2", "text", yaml)).statusCode());
    assertEquals("2", browser.revision(), "a text sent as it was is no change");
    String edited =
        yaml.replace("model: offset", "model: offset # plain\r\nmicrophone_drift_db: 0.2");
    assertEquals(
        303,
        browser
            .post("/settings-text", Map.of("revision", "2", "text", edited.replace("\r\n", "\n")))
            .statusCode());
    assertEquals(edited, browser.content("study.yaml"), "the file keeps its own line ends");
    assertTrue(browser.get("/study").body().contains("The text of study.yaml was edited."));
    assertEquals(303, browser.post("/undo", Map.of("revision", "3")).statusCode());
    assertEquals(yaml, browser.content("study.yaml"));
  }

  @Test
  void aTextThatCannotBeReadIsKeptOnThePageWithItsLines() throws Exception {
    String yaml = browser.content("study.yaml");
    String spoiled = yaml.replace("seed: ", "sead: ").replace("model: offset", "model: <b>");
    HttpResponse<String> refused =
        browser.post("/settings-text", Map.of("revision", "1", "text", spoiled));
    assertEquals(400, refused.statusCode());
    assertEquals(yaml, browser.content("study.yaml"));
    List<String> lines = spoiled.lines().toList();
    int line = lines.indexOf("model: <b>") + 1;
    assertTrue(line > 0);
    assertTrue(
        refused.body().contains("<li>study.yaml:" + line + ": `model` is `&lt;b&gt;`"),
        refused.body());
    assertTrue(refused.body().contains("Go to line " + line + "<"), refused.body());
    assertTrue(refused.body().contains("<span class=\"quoted\">model: &lt;b&gt;</span>"));
    assertTrue(refused.body().contains("\nmodel: &lt;b&gt;\n"), "the text as it was sent");
    HttpResponse<String> broken =
        browser.post("/settings-text", Map.of("revision", "1", "text", yaml + "zones: [\n"));
    assertEquals(400, broken.statusCode());
    assertTrue(broken.body().contains("<li>study.yaml:"), broken.body());
    HttpResponse<String> huge =
        browser.post("/settings-text", Map.of("revision", "1", "text", "#".repeat(3_000_000)));
    assertEquals(413, huge.statusCode());
    assertTrue(huge.body().contains("A form may hold at most 2 MB of text."), huge.body());
    assertEquals(yaml, browser.content("study.yaml"));
  }

  /** The text may name other tables; what was seen and what may be undone must follow. */
  @Test
  void anotherTableOfCapturesIsFollowed() throws Exception {
    String yaml = browser.content("study.yaml");
    String table = browser.content("captures.csv");
    browser.leaveOut(browser.first(), "1", "in the first table");
    String first = browser.content("captures.csv");
    Files.writeString(browser.file("other.csv"), table);
    String other = yaml.replace("captures: captures.csv", "captures: other.csv");
    assertEquals(
        303, browser.post("/settings-text", Map.of("revision", "2", "text", other)).statusCode());
    browser.leaveOut(browser.first(), "3", "in the other table");
    assertEquals(first, browser.content("captures.csv"));
    assertTrue(browser.content("other.csv").contains(",in the other table,"));
    browser.post("/undo", Map.of("revision", "4"));
    assertEquals(table, browser.content("other.csv"));
    browser.post("/undo", Map.of("revision", "5"));
    assertEquals(yaml, browser.content("study.yaml"));
    // While the study looked elsewhere, someone wrote into the first table.
    Files.writeString(browser.file("captures.csv"), first + "# by hand\n");
    HttpResponse<String> refused = browser.post("/undo", Map.of("revision", "6"));
    assertEquals(409, refused.statusCode());
    assertEquals(first + "# by hand\n", browser.content("captures.csv"));
  }
}
