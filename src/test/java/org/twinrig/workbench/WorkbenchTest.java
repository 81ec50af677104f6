package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;

/** The workbench as a whole. */
class WorkbenchTest extends OpenWorkbench {
  @Test
  void hostileNamesAreShownAndNeverRun() throws Exception {
    String bad = "<script>alert(1)</script>";
    String unit = browser.first().unit();
    for (String file : List.of("captures.csv", "units.csv")) {
      Files.writeString(
          browser.file(file), browser.content(file).replaceAll("(?m)^" + unit + ",", bad + ","));
    }
    Files.writeString(
        browser.file("study.yaml"),
        browser.content("study.yaml").replaceFirst("title: .*", "title: \"=cmd() <img src=x>\""));
    browser.post("/reload", Map.of());
    for (String path :
        List.of(
            "/",
            "/unit?name=" + Pages.query(bad),
            "/study",
            "/zones?hz=1000",
            "/settings",
            "/catalogue",
            "/report",
            "/unit?name=" + Pages.query("\"><script>"))) {
      String page = browser.get(path).body();
      assertFalse(page.contains("<script>"), path);
      assertFalse(page.contains("<img src=x"), path);
      assertTrue(page.contains("=cmd() &lt;img src=x") || path.endsWith("script%3E"), path);
    }
    assertTrue(browser.get("/").body().contains("&lt;script&gt;alert(1)&lt;/script&gt;"));
  }

  @Test
  void columnsAndStateSayWhatTheyCount() throws Exception {
    String page = browser.get("/").body();
    assertTrue(page.contains(">state 1</span>"), page);
    assertTrue(page.contains("<th scope=\"col\" class=\"n\">Captures on the old fixture</th>"));
    assertTrue(page.contains("<th scope=\"col\" class=\"n\">Captures on the new fixture</th>"));
  }

  @Test
  void aStudyThatCannotBeEstimatedCanStillBeWorkedOn() throws Exception {
    String whole = browser.content("captures.csv");
    Files.writeString(browser.file("captures.csv"), whole.replaceAll("(plate-\\d+),,", "$1,gone,"));
    assertEquals(303, browser.post("/reload", Map.of()).statusCode());
    String unit = "/unit?name=" + Pages.query(browser.first().unit());
    for (String path :
        List.of("/", unit, "/study", "/settings", "/zones", "/catalogue", "/report")) {
      assertEquals(200, browser.get(path).statusCode(), path);
    }
    String page = browser.get("/study").body();
    assertTrue(page.contains("Nothing can be estimated now."), page);
    assertTrue(page.contains("no unit has an accepted capture on both fixtures"), page);
    browser.finish(browser.post("/report", Map.of()));
    assertFalse(Files.exists(browser.file("results")));
    Files.writeString(browser.file("captures.csv"), "unit,side\n");
    HttpResponse<String> broken = browser.post("/reload", Map.of());
    assertEquals(400, broken.statusCode());
    assertTrue(broken.body().contains("<li>captures.csv:1: "), broken.body());
    Files.writeString(browser.file("captures.csv"), whole);
    assertEquals(303, browser.post("/reload", Map.of()).statusCode());
    assertTrue(browser.get("/study").body().contains("in-ear, 6 units: "));
  }

  @Test
  void manyAtOnceAreAnswered() throws Exception {
    List<String> paths =
        List.of(
            "/",
            "/study",
            "/zones?hz=1000",
            "/settings",
            "/unit?name=" + Pages.query(browser.first().unit()));
    ExecutorService pool = Executors.newFixedThreadPool(40);
    try {
      List<Callable<Integer>> asks = new ArrayList<>();
      for (int k = 0; k < 200; k++) {
        String path = paths.get(k % paths.size());
        asks.add(() -> browser.get(path).statusCode());
      }
      for (Future<Integer> status : pool.invokeAll(asks)) {
        assertEquals(200, status.get());
      }
      List<Callable<Integer>> changes = new ArrayList<>();
      for (int k = 0; k < 10; k++) {
        String reason = "at once " + k;
        changes.add(() -> browser.leaveOut(browser.first(), "1", reason).statusCode());
      }
      int done = 0;
      for (Future<Integer> status : pool.invokeAll(changes)) {
        done += status.get() == 303 ? 1 : 0;
      }
      assertEquals(1, done, "of changes that start from one snapshot, one is made");
      assertEquals("2", browser.revision());
    } finally {
      pool.shutdownNow();
    }
  }
}
