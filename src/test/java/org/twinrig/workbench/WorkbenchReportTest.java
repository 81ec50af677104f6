package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.report.ExampleChoice;
import org.twinrig.report.html.ExplainPage;

/** What is written for the lab and its readers, and shown. */
class WorkbenchReportTest extends OpenWorkbench {
  @Test
  void theReportIsWrittenAsTheCommandLineWould() throws Exception {
    browser.finish(browser.post("/report", Map.of()));
    assertTrue(browser.content("results/report.html").contains("How to read the marks"));
    assertTrue(Files.isRegularFile(browser.file("results/run.json")));
  }

  private static String policy(HttpResponse<String> response) {
    return response.headers().firstValue("Content-Security-Policy").orElseThrow();
  }

  @Test
  void whatIsWrittenIsShown() throws Exception {
    for (String page : List.of("/report.html", "/explained.html")) {
      assertEquals(303, browser.get(page).statusCode(), "there is none yet");
    }
    assertTrue(browser.get("/report").body().contains("It has not been written yet."));
    browser.finish(browser.post("/report", Map.of()));
    browser.finish(browser.post("/explained", Map.of()));
    for (String file : List.of("report.html", "explained.html")) {
      HttpResponse<String> shown = browser.get("/" + file);
      String where = file.equals("report.html") ? "results/report.html" : file;
      assertEquals(browser.content(where), shown.body());
      assertTrue(policy(shown).contains("default-src 'none';"), policy(shown));
      assertTrue(policy(shown).contains("sandbox allow-scripts"), policy(shown));
      assertFalse(policy(shown).contains("allow-same-origin"), policy(shown));
      assertFalse(policy(shown).contains("script-src 'unsafe-inline'"), policy(shown));
      HttpResponse<String> saved = browser.get("/" + file + "?download");
      assertEquals(
          "attachment; filename=\"" + file + "\"",
          saved.headers().firstValue("Content-Disposition").orElseThrow());
      assertEquals(shown.body(), saved.body());
    }
    String now = "<p>It was written from the study as it stands now.</p>";
    assertEquals(3, browser.get("/report").body().split(now, -1).length);
    browser.leaveOut(browser.first(), "1", "later");
    String page = browser.get("/report").body();
    assertFalse(page.contains(now), page);
    assertTrue(page.contains("It was written before the last change and does not show it."), page);
  }

  /** The page for readers is the one the command line writes, byte for byte. */
  @Test
  void thePageForReadersIsTheCommandLines() throws Exception {
    browser.finish(browser.post("/explained", Map.of()));
    StudyOutcome outcome =
        new StudySession(browser.file("."), List.of(), 1, study -> {})
            .snapshot()
            .outcome()
            .orElseThrow();
    assertEquals(
        ExplainPage.html(outcome, new ExampleChoice(outcome, 1).example().value().graph(), 0),
        browser.content("explained.html"));
  }

  @Test
  void whatIsNotOursIsNeitherShownNorReplaced() throws Exception {
    String secret = "<!DOCTYPE html><html lang=\"en\" data-page=\"twinrig explain\">secret";
    Path elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
    Files.writeString(elsewhere.resolve("report.html"), secret);
    Files.createSymbolicLink(browser.file("results"), elsewhere);
    Files.createSymbolicLink(browser.file("explained.html"), elsewhere.resolve("report.html"));
    for (String page :
        List.of("/report.html", "/explained.html", "/report.html?download=../../x")) {
      HttpResponse<String> response = browser.get(page);
      assertEquals(303, response.statusCode(), page);
      assertFalse(response.body().contains("secret"), page);
    }
    Files.delete(browser.file("explained.html"));
    Files.writeString(browser.file("explained.html"), "the lab's own");
    String failed = browser.get(browser.finish(browser.post("/explained", Map.of()))).body();
    assertTrue(
        failed.contains("is not known to be a page of twinrig that nobody changed; move it away"),
        failed);
    assertEquals("the lab's own", browser.content("explained.html"));
    assertEquals(secret, Files.readString(elsewhere.resolve("report.html")));
  }

  @Test
  void writingTheReportCanBeStopped() throws Exception {
    browser.finish(browser.post("/report", Map.of()));
    byte[] earlier = Files.readAllBytes(browser.file("results/run.json"));
    HttpResponse<String> begun = browser.post("/report", Map.of());
    String place = begun.headers().firstValue("Location").orElseThrow();
    browser.post("/work-stop", Map.of("id", place.substring(place.indexOf('=') + 1)));
    browser.finish(begun);
    String page = browser.get(place).body();
    assertTrue(page.contains("It was stopped; nothing was kept of it."), page);
    assertArrayEquals(earlier, Files.readAllBytes(browser.file("results/run.json")));
    try (Stream<Path> files = Files.list(browser.file("."))) {
      assertEquals(
          List.of(),
          files.map(f -> f.getFileName().toString()).filter(n -> n.endsWith(".writing")).toList());
    }
    browser.finish(browser.post("/report", Map.of()));
    assertEquals(200, browser.get("/report.html").statusCode(), "the next work is not disturbed");
  }
}
