package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.analysis.Analysis;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Capture;
import org.twinrig.study.CaptureReading;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;

class WorkbenchTest {
  @TempDir Path folder;
  private Browser browser;

  @BeforeEach
  void open() throws Exception {
    Browser.write(folder.resolve("study"));
    browser = Browser.on(folder.resolve("study"));
  }

  @AfterEach
  void close() {
    browser.close();
    assertEquals(List.of(), browser.faults());
  }

  /** The first capture in the table that a unit's page offers to leave out. */
  private record Chosen(String unit, String line, String row) {}

  private Chosen first() throws Exception {
    List<String> lines = browser.content("captures.csv").lines().toList();
    String unit = lines.get(1).split(",", -1)[0];
    return new Chosen(unit, "2", lines.get(1));
  }

  private HttpResponse<String> leaveOut(Chosen c, String revision, String reason) throws Exception {
    return browser.post(
        "/leave-out",
        Map.of("revision", revision, "line", c.line(), "unit", c.unit(), "reason", reason));
  }

  private HttpResponse<String> takeBack(Chosen c, String revision) throws Exception {
    return browser.post(
        "/take-back", Map.of("revision", revision, "line", c.line(), "unit", c.unit()));
  }

  @Test
  void whatIsLeftOutStandsInTheTableAndComesBackByteForByte() throws Exception {
    byte[] before = Files.readAllBytes(browser.file("captures.csv"));
    Chosen chosen = first();
    HttpResponse<String> done = leaveOut(chosen, "1", "cable touched the plate");
    assertEquals(303, done.statusCode());
    assertEquals(
        "/unit?name=" + Pages.query(chosen.unit()) + "#entry-2",
        done.headers().firstValue("Location").orElseThrow());
    List<String> lines = browser.content("captures.csv").lines().toList();
    assertEquals(lines.get(1).replace("cable touched the plate", ""), chosen.row());
    assertTrue(lines.get(1).contains(",cable touched the plate,"), lines.get(1));
    String page = browser.get("/unit?name=" + Pages.query(chosen.unit())).body();
    assertTrue(page.contains("left out: cable touched the plate"), page);
    assertEquals(303, takeBack(chosen, "2").statusCode());
    assertArrayEquals(before, Files.readAllBytes(browser.file("captures.csv")));
    try (Stream<Path> files = Files.list(browser.file("."))) {
      assertEquals(
          List.of(),
          files.map(f -> f.getFileName().toString()).filter(n -> n.startsWith(".")).toList());
    }
  }

  @Test
  void undoGoesBackStepByStep() throws Exception {
    byte[] before = Files.readAllBytes(browser.file("captures.csv"));
    byte[] yaml = Files.readAllBytes(browser.file("study.yaml"));
    Chosen chosen = first();
    leaveOut(chosen, "1", "one");
    browser.post("/settings", Map.of("revision", "2", "tolerance.reliable_db", "1.2"));
    byte[] settled = Files.readAllBytes(browser.file("study.yaml"));
    takeBack(chosen, "3");
    assertEquals("4", browser.revision());
    assertTrue(browser.get("/").body().contains("seating 1 (M), was taken back."));
    for (String revision : List.of("4", "5", "6", "7")) {
      assertEquals(
          303, browser.post("/undo", Map.of("revision", revision, "back", "/study")).statusCode());
      if (revision.equals("4")) {
        assertTrue(browser.content("captures.csv").contains(",one,"));
        assertArrayEquals(settled, Files.readAllBytes(browser.file("study.yaml")));
      }
    }
    assertArrayEquals(before, Files.readAllBytes(browser.file("captures.csv")));
    assertArrayEquals(yaml, Files.readAllBytes(browser.file("study.yaml")));
    assertEquals("7", browser.revision(), "an undo with nothing to undo is no change");
  }

  @Test
  void undoLeadsOnlyToItsOwnPages() throws Exception {
    for (String back : List.of("//lab.example", "http://lab.example", "/a\r\nX: y", "/\\lab")) {
      assertEquals(
          "/",
          browser
              .post("/undo", Map.of("revision", "1", "back", back))
              .headers()
              .firstValue("Location")
              .orElseThrow());
    }
  }

  @Test
  void aStaleChangeIsRefusedWithWhatHappenedMeanwhile() throws Exception {
    Chosen chosen = first();
    leaveOut(chosen, "1", "first browser");
    byte[] after = Files.readAllBytes(browser.file("captures.csv"));
    HttpResponse<String> stale = leaveOut(chosen, "1", "second browser");
    assertEquals(409, stale.statusCode());
    assertTrue(stale.body().contains("The study has changed meanwhile"));
    assertTrue(stale.body().contains("seating 1 (M), was left out: first browser."), stale.body());
    assertArrayEquals(after, Files.readAllBytes(browser.file("captures.csv")));
  }

  @Test
  void aFileChangedByOthersIsNeverOverwritten() throws Exception {
    Chosen chosen = first();
    String mine =
        browser
            .content("captures.csv")
            .replaceFirst("(?m)^" + chosen.unit(), "# by hand\n" + chosen.unit());
    Files.writeString(browser.file("captures.csv"), mine);
    HttpResponse<String> refused = leaveOut(chosen, "1", "mine");
    assertEquals(409, refused.statusCode());
    assertTrue(refused.body().contains("captures.csv has changed on the disk"), refused.body());
    assertTrue(refused.body().contains("line 2 is now: # by hand"), refused.body());
    assertEquals(mine, browser.content("captures.csv"));
    assertTrue(
        browser.get("/study").body().contains("captures.csv was changed by someone else since it"));
    assertEquals(303, browser.post("/reload", Map.of()).statusCode());
    assertEquals(303, leaveOut(new Chosen(chosen.unit(), "3", ""), "2", "mine").statusCode());
    assertEquals(
        mine.replaceFirst("csv,([^,]*),,", "csv,$1,mine,"), browser.content("captures.csv"));
  }

  @Test
  void aReasonMustBeOne() throws Exception {
    byte[] before = Files.readAllBytes(browser.file("captures.csv"));
    Map<String, String> refusals = new LinkedHashMap<>();
    refusals.put("  ", "is empty: whoever reads the table later must know why");
    refusals.put("=cmd()", "and a spreadsheet would take it for a formula");
    refusals.put("x".repeat(301), "is longer than 300 letters");
    for (Map.Entry<String, String> each : refusals.entrySet()) {
      HttpResponse<String> refused = leaveOut(first(), "1", each.getKey());
      assertEquals(400, refused.statusCode());
      assertTrue(refused.body().contains(each.getValue()), refused.body());
    }
    HttpResponse<String> nowhere = leaveOut(new Chosen("x", "9999", ""), "1", "why");
    assertEquals(400, nowhere.statusCode());
    assertTrue(nowhere.body().contains("no capture of the study stands in this line"));
    assertArrayEquals(before, Files.readAllBytes(browser.file("captures.csv")));
  }

  /** What the pages show after changes is what a study read afresh from the disk gives. */
  @Test
  void theStudyIsWhatTheFilesSay() throws Exception {
    leaveOut(first(), "1", "gone");
    browser.post("/settings", Map.of("revision", "2", "tolerance.reliable_db", "1.1"));
    Book fresh = Book.open(browser.file("."), 1);
    Study study = StudyReader.read(browser.file(".")).value();
    List<Capture> captures = CaptureReading.read(study, 1).value();
    String fingerprint = InputFingerprint.of(study, captures).shortText();
    StudyOutcome whole = Analysis.of(study, captures, fingerprint, 1);
    assertEquals(whole.kinds(), fresh.leaf().outcome().orElseThrow().kinds());
    Book changed = Book.open(browser.file("."), 2);
    changed.exclude(1, 3, "gone too");
    changed.undo(2);
    StudyOutcome back = changed.leaf().outcome().orElseThrow();
    assertEquals(whole.kinds(), back.kinds());
    assertEquals(fingerprint, back.fingerprint());
    String page = browser.get("/study").body();
    assertTrue(page.contains(fingerprint), "the page shows the study of the files");
  }

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
  void hostileNamesAreShownAndNeverRun() throws Exception {
    String bad = "<script>alert(1)</script>";
    String unit = first().unit();
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
  void graphsAreReExpressedAndSpoiledOnesRefused() throws Exception {
    Path graph;
    try (Stream<Path> graphs = Files.list(browser.file("catalogue"))) {
      graph = graphs.sorted().findFirst().orElseThrow();
    }
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("<b>one</b>.csv", Files.readAllBytes(graph));
    files.put("../../two.csv", Files.readAllBytes(graph));
    files.put("spoiled.csv", "no numbers here\n".getBytes(StandardCharsets.UTF_8));
    browser.finish(browser.upload(files, "in-ear"));
    String page = browser.get("/catalogue").body();
    assertTrue(page.contains("&lt;b&gt;one") || page.contains("b&gt;.csv"), page);
    assertTrue(page.contains(">two.csv</a>"), page);
    assertTrue(page.contains("<li>spoiled.csv: "), page);
    assertTrue(page.contains("2 of 2 graphs shown"), page);
    HttpResponse<String> table = browser.get("/graph.csv?name=two.csv");
    assertEquals(
        "attachment; filename=\"two-csv-re-expressed.csv\"",
        table.headers().firstValue("Content-Disposition").orElseThrow());
    assertTrue(table.body().startsWith("band_hz,from_db,to_db,low_db,high_db,mark,reasons\n"));
    assertEquals(200, browser.get("/graph?name=two.csv").statusCode());
  }

  @Test
  void theCatalogueIsATableToSortAndFilter() throws Exception {
    browser.finish(browser.post("/catalogue-run", Map.of()));
    String all = browser.get("/catalogue?sort=Reliable").body();
    assertTrue(all.contains("4 of 4 graphs shown"), all);
    Matcher graph = Pattern.compile("/graph\\?name=([A-Za-z0-9-]+)").matcher(all);
    assertTrue(graph.find());
    String one = browser.get("/catalogue?find=" + graph.group(1)).body();
    assertTrue(one.contains("1 of 4 graphs shown"), one);
  }

  @Test
  void moreThanIsTakenIsRefused() throws Exception {
    HttpResponse<String> broken =
        browser.send(
            browser
                .request("/catalogue")
                .header("Origin", browser.root())
                .header("Content-Type", "multipart/form-data; boundary=xyz")
                .POST(HttpRequest.BodyPublishers.ofString("--xyz\r\nContent-Disp"))
                .build());
    assertEquals(400, broken.statusCode(), broken.body());
    assertTrue(broken.body().contains("the form did not arrive whole; send it again"));
    HttpResponse<String> large =
        browser.upload(Map.of("large.csv", new byte[Desk.MOST_BYTES_A_FILE + 1]), "in-ear");
    assertEquals(413, large.statusCode(), large.body());
    assertTrue(large.body().contains("At most 200 graphs of at most 4 MB each"), large.body());
    HttpResponse<String> huge = browser.upload(Map.of("huge.csv", new byte[40_000_000]), "in-ear");
    assertEquals(413, huge.statusCode(), huge.body());
    Map<String, byte[]> many = new LinkedHashMap<>();
    for (int k = 0; k <= Desk.MOST_FILES; k++) {
      many.put("g" + k + ".csv", new byte[] {'1'});
    }
    assertEquals(413, browser.upload(many, "in-ear").statusCode());
    HttpResponse<String> none = browser.upload(Map.of(), "in-ear");
    assertEquals(400, none.statusCode());
    assertTrue(none.body().contains("no file was chosen"));
  }

  @Test
  void theReportIsWrittenAsTheCommandLineWould() throws Exception {
    browser.finish(browser.post("/report", Map.of()));
    assertTrue(browser.content("results/report.html").contains("How to read the marks"));
    assertTrue(Files.isRegularFile(browser.file("results/run.json")));
  }

  @Test
  void aStudyThatCannotBeEstimatedCanStillBeWorkedOn() throws Exception {
    String whole = browser.content("captures.csv");
    Files.writeString(browser.file("captures.csv"), whole.replaceAll("(plate-\\d+),,", "$1,gone,"));
    assertEquals(303, browser.post("/reload", Map.of()).statusCode());
    String unit = "/unit?name=" + Pages.query(first().unit());
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
            "/unit?name=" + Pages.query(first().unit()));
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
        changes.add(() -> leaveOut(first(), "1", reason).statusCode());
      }
      int done = 0;
      for (Future<Integer> status : pool.invokeAll(changes)) {
        done += status.get() == 303 ? 1 : 0;
      }
      assertEquals(1, done, "of changes that start from one leaf, one is made");
      assertEquals("2", browser.revision());
    } finally {
      pool.shutdownNow();
    }
  }
}
