package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.twinrig.analysis.Analysis;
import org.twinrig.study.CaptureReading;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;

/** The way to the captures in doubt: those that screening doubts and that still count. */
class WorkbenchDoubtsTest extends OpenWorkbench {
  private static final String RULE = "aria-label=\"Left out by a rule of screening\"";

  private String page(String path) throws Exception {
    return browser.get(path).body();
  }

  private String unitOf(int line) throws Exception {
    return browser.content("captures.csv").lines().toList().get(line - 1).split(",", -1)[0];
  }

  private static String place(String unit, int line) {
    return "./unit?name=" + Pages.query(unit) + "#entry-" + line;
  }

  /** Where the links of the page's part on doubts lead. */
  private static List<String> leads(String page) {
    Matcher part = Pattern.compile("(?s)<section class=\"doubts\".*?</section>").matcher(page);
    assertTrue(part.find(), page);
    Matcher link = Pattern.compile("<li><a href=\"([^\"]+)\"").matcher(part.group());
    List<String> leads = new ArrayList<>();
    while (link.find()) {
      leads.add(link.group(1).replace("&amp;", "&"));
    }
    return leads;
  }

  /** A seal that was lost: no bass. */
  static void leak(Browser browser, int line) throws Exception {
    String row = browser.content("captures.csv").lines().toList().get(line - 1);
    Path file = browser.file(row.split(",", -1)[4]);
    byte[] bytes = Files.readAllBytes(file);
    Charset letters = (bytes[0] & 0xFF) == 0xFF ? StandardCharsets.UTF_16 : StandardCharsets.UTF_8;
    List<String> lines = new ArrayList<>();
    for (String text : new String(bytes, letters).lines().toList()) {
      Matcher point = Pattern.compile("([0-9.]+)([;,\t ]+)(-?[0-9.]+)(.*)").matcher(text);
      boolean low = point.matches() && Double.parseDouble(point.group(1)) < 200;
      lines.add(
          low
              ? point.group(1)
                  + point.group(2)
                  + (Double.parseDouble(point.group(3)) - 25)
                  + point.group(4)
              : text);
    }
    Files.write(file, (String.join("\n", lines) + "\n").getBytes(letters));
  }

  /** Doubts are told, and nothing is left out because of them. */
  static void suggest(Browser browser) throws Exception {
    Files.writeString(
        browser.file("study.yaml"),
        browser.content("study.yaml").replace("apply: exclude", "apply: suggest"));
  }

  @Test
  void everyUnitInDoubtIsListedAndLedToUntilNoneIsLeft() throws Exception {
    int first = 2;
    int last = browser.content("captures.csv").lines().toList().size();
    leak(browser, first);
    leak(browser, last);
    suggest(browser);
    assertEquals(303, browser.post("/reload", Map.of()).statusCode());
    // What a study read afresh by the library doubts; nothing is left out yet.
    Study study = StudyReader.read(browser.file(".")).value();
    List<Integer> doubted =
        Analysis.of(study, CaptureReading.read(study, 1).value(), "x", 1)
            .screening()
            .verdicts()
            .stream()
            .map(v -> v.capture().line())
            .distinct()
            .toList();
    assertTrue(doubted.contains(first) && doubted.contains(last), doubted::toString);
    List<String> units = new ArrayList<>();
    for (int line : doubted) {
      if (!units.contains(unitOf(line))) {
        units.add(unitOf(line));
      }
    }
    String contents = page("/");
    assertTrue(
        contents.contains(
            "<p>" + doubted.size() + " captures of " + units.size() + " units are in doubt: "),
        contents);
    assertEquals(units.size(), leads(contents).size(), contents);
    assertTrue(leads(contents).contains(place(unitOf(first), first)), contents);
    assertTrue(contents.contains("lost seal"), contents);

    String here = page(leads(contents).get(0));
    assertTrue(leads(here).contains("#entry-" + first), here);
    assertTrue(here.indexOf("lost seal: bass below") < here.indexOf("<article"), "at the top");
    // From the first of them, the page of every unit leads to the next, and back.
    List<String> way = leads(contents);
    for (int k = 0; k < way.size(); k++) {
      String unit = page(way.get(k));
      assertEquals(
          k + 1 < way.size(), unit.contains("data-key=\"d\" href=\"" + at(way, k + 1) + "\""));
      assertEquals(k > 0, unit.contains("data-key=\"e\" href=\"" + at(way, k - 1) + "\""));
    }

    // Decided one after the other, as the list leads.
    for (int k = 0; k < 40 && !leads(page("/")).isEmpty(); k++) {
      String next = leads(page("/")).get(0);
      String line = next.substring(next.indexOf("#entry-") + 7);
      Browser.Chosen chosen = new Browser.Chosen(unitOf(Integer.parseInt(line)), line, "");
      assertEquals(
          303, browser.leaveOut(chosen, browser.revision(), "no seal, round " + k).statusCode());
      assertFalse(page("/").contains("#entry-" + line + "\""), line);
    }
    assertTrue(page("/").contains("<p>No capture is in doubt: "), page("/"));
    assertFalse(page(place(unitOf(first), first)).contains("doubts-title"));
  }

  private static String at(List<String> way, int k) {
    return k < 0 || k >= way.size() ? "nowhere" : way.get(k).replace("&", "&amp;");
  }

  /** Left out by a rule is decided; where nothing can be estimated nothing is screened. */
  @Test
  void aRuleDecidesTooAndNoStudyIsNotNoDoubt() throws Exception {
    leak(browser, 2);
    suggest(browser);
    browser.post("/reload", Map.of());
    assertFalse(page("/").contains(RULE));
    assertTrue(leads(page("/")).contains(place(unitOf(2), 2)));
    assertEquals(
        303,
        browser
            .post("/settings", Map.of("revision", "2", "screening.apply", "exclude"))
            .statusCode());
    String ruled = page("/");
    assertFalse(leads(ruled).contains(place(unitOf(2), 2)), ruled);
    assertTrue(
        leads(ruled.substring(ruled.indexOf(RULE) - "<section class='doubts' ".length()))
            .contains(place(unitOf(2), 2)),
        ruled);
    assertTrue(page(place(unitOf(2), 2)).contains("left out by a rule"));
    String captures = browser.content("captures.csv");
    Files.writeString(
        browser.file("captures.csv"), captures.replaceAll("(plate-\\d+),,", "$1,gone,"));
    browser.post("/reload", Map.of());
    assertTrue(
        page("/").contains("cannot be estimated now, so its captures are not screened"), page("/"));
  }

  /** The corner of every page leads to what its number counts. */
  @Test
  void theStateIsExplainedWhereItStandsAndInTheList() throws Exception {
    browser.leaveOut(browser.first(), "1", "to be undone");
    browser.post("/undo", Map.of("revision", "2"));
    for (String path : List.of("/", "/study", "/settings", "/catalogue")) {
      String page = page(path);
      assertTrue(
          page.contains(
              "href=\"./#states\" title=\"Each change to the study, and each undo, makes a new"
                  + " state;"),
          page);
      assertTrue(page.contains("<span>state 3</span>"), page);
    }
    String list = page("/");
    assertTrue(list.contains("<h2 id=\"states\">"), list);
    assertTrue(list.contains("<li value=\"3\">Undone: "), list);
    try (Stream<String> lines = list.lines()) {
      assertEquals(3, lines.filter(l -> l.startsWith("<li value=")).count());
    }
  }
}
