package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.twinrig.analysis.Analysis;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Capture;
import org.twinrig.study.CaptureReading;
import org.twinrig.study.InputFingerprint;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;

/** What is changed stands in the files of the lab, and can be taken back. */
class WorkbenchChangesTest extends OpenWorkbench {
  @Test
  void whatIsLeftOutStandsInTheTableAndComesBackByteForByte() throws Exception {
    byte[] before = Files.readAllBytes(browser.file("captures.csv"));
    Browser.Chosen chosen = browser.first();
    HttpResponse<String> done = browser.leaveOut(chosen, "1", "cable touched the plate");
    assertEquals(303, done.statusCode());
    assertEquals(
        "./unit?name=" + Pages.query(chosen.unit()) + "#entry-2",
        done.headers().firstValue("Location").orElseThrow());
    List<String> lines = browser.content("captures.csv").lines().toList();
    assertEquals(lines.get(1).replace("cable touched the plate", ""), chosen.row());
    assertTrue(lines.get(1).contains(",cable touched the plate,"), lines.get(1));
    String page = browser.get("/unit?name=" + Pages.query(chosen.unit())).body();
    assertTrue(page.contains("left out: cable touched the plate"), page);
    assertEquals(303, browser.takeBack(chosen, "2").statusCode());
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
    Browser.Chosen chosen = browser.first();
    browser.leaveOut(chosen, "1", "one");
    browser.post("/settings", Map.of("revision", "2", "tolerance.reliable_db", "1.2"));
    byte[] settled = Files.readAllBytes(browser.file("study.yaml"));
    browser.takeBack(chosen, "3");
    assertEquals("4", browser.revision());
    assertTrue(browser.get("/").body().contains("seating 1 (M), was taken back."));
    for (String revision : List.of("4", "5", "6", "7")) {
      assertEquals(
          "./settings-text",
          browser
              .post("/undo", Map.of("revision", revision, "back", "./settings-text"))
              .headers()
              .firstValue("Location")
              .orElseThrow());
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
    for (String back :
        List.of(
            "//lab.example",
            ".//lab.example",
            "http://lab.example",
            "/a",
            "./a\r\nX: y",
            "./\\lab")) {
      assertEquals(
          "./",
          browser
              .post("/undo", Map.of("revision", "1", "back", back))
              .headers()
              .firstValue("Location")
              .orElseThrow());
    }
  }

  @Test
  void aStaleChangeIsRefusedWithWhatHappenedMeanwhile() throws Exception {
    Browser.Chosen chosen = browser.first();
    browser.leaveOut(chosen, "1", "first browser");
    byte[] after = Files.readAllBytes(browser.file("captures.csv"));
    HttpResponse<String> stale = browser.leaveOut(chosen, "1", "second browser");
    assertEquals(409, stale.statusCode());
    assertTrue(stale.body().contains("The study has changed meanwhile"));
    assertTrue(stale.body().contains("seating 1 (M), was left out: first browser."), stale.body());
    assertArrayEquals(after, Files.readAllBytes(browser.file("captures.csv")));
  }

  @Test
  void aFileChangedByOthersIsNeverOverwritten() throws Exception {
    Browser.Chosen chosen = browser.first();
    String mine =
        browser
            .content("captures.csv")
            .replaceFirst("(?m)^" + chosen.unit(), "# by hand\n" + chosen.unit());
    Files.writeString(browser.file("captures.csv"), mine);
    HttpResponse<String> refused = browser.leaveOut(chosen, "1", "mine");
    assertEquals(409, refused.statusCode());
    assertTrue(refused.body().contains("captures.csv has changed on the disk"), refused.body());
    assertTrue(refused.body().contains("line 2 is now: # by hand"), refused.body());
    assertEquals(mine, browser.content("captures.csv"));
    assertTrue(
        browser.get("/study").body().contains("captures.csv was changed by someone else since it"));
    assertEquals(303, browser.post("/reload", Map.of()).statusCode());
    assertEquals(
        303,
        browser.leaveOut(new Browser.Chosen(chosen.unit(), "3", ""), "2", "mine").statusCode());
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
      HttpResponse<String> refused = browser.leaveOut(browser.first(), "1", each.getKey());
      assertEquals(400, refused.statusCode());
      assertTrue(refused.body().contains(each.getValue()), refused.body());
    }
    HttpResponse<String> nowhere =
        browser.leaveOut(new Browser.Chosen("x", "9999", ""), "1", "why");
    assertEquals(400, nowhere.statusCode());
    assertTrue(nowhere.body().contains("no capture of the study stands in this line"));
    assertArrayEquals(before, Files.readAllBytes(browser.file("captures.csv")));
  }

  @Test
  void aLineOfAnotherUnitIsRefused() throws Exception {
    byte[] before = Files.readAllBytes(browser.file("captures.csv"));
    List<String> lines = browser.content("captures.csv").lines().toList();
    String there = browser.first().unit();
    String other = lines.get(lines.size() - 1).split(",", -1)[0];
    String wanted =
        "captures.csv:2: a capture of `"
            + there
            + "` stands in this line, none of `"
            + other
            + "`; open the unit's page again and choose one of its captures";
    for (HttpResponse<String> refused :
        List.of(
            browser.leaveOut(new Browser.Chosen(other, "2", ""), "1", "why"),
            browser.takeBack(new Browser.Chosen(other, "2", ""), "1"))) {
      assertEquals(400, refused.statusCode());
      assertTrue(refused.body().contains(wanted), refused.body());
    }
    assertArrayEquals(before, Files.readAllBytes(browser.file("captures.csv")));
  }

  /** Else a reason would go to the line the capture had before. */
  @Test
  void aTableThatChangesWhileTheStudyIsOpenedIsNoticed() throws Exception {
    Path captures = browser.file("captures.csv");
    String unit = browser.first().unit();
    StudySession session =
        new StudySession(
            browser.file("."),
            List.of(),
            1,
            study -> {
              try {
                List<String> lines = new ArrayList<>(Files.readAllLines(captures));
                lines.add(2, lines.remove(1));
                Files.write(captures, lines);
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
            });
    byte[] now = Files.readAllBytes(captures);
    RefusedException refused =
        assertThrows(RefusedException.class, () -> session.exclude(1, 2, unit, "not this one"));
    assertEquals("captures.csv has changed on the disk", refused.getMessage());
    assertArrayEquals(now, Files.readAllBytes(captures));
  }

  /** What the pages show after changes is what a study read afresh from the disk gives. */
  @Test
  void theStudyIsWhatTheFilesSay() throws Exception {
    browser.leaveOut(browser.first(), "1", "gone");
    browser.post("/settings", Map.of("revision", "2", "tolerance.reliable_db", "1.1"));
    StudySession fresh = new StudySession(browser.file("."), List.of(), 1, read -> {});
    Study study = StudyReader.read(browser.file(".")).value();
    List<Capture> captures = CaptureReading.read(study, 1).value();
    String fingerprint = InputFingerprint.of(study, captures).shortText();
    StudyOutcome whole = Analysis.of(study, captures, fingerprint, 1);
    assertEquals(whole.kinds(), fresh.snapshot().outcome().orElseThrow().kinds());
    StudySession changed = new StudySession(browser.file("."), List.of(), 2, read -> {});
    changed.exclude(1, 3, browser.first().unit(), "gone too");
    changed.undo(2);
    StudyOutcome back = changed.snapshot().outcome().orElseThrow();
    assertEquals(whole.kinds(), back.kinds());
    assertEquals(fingerprint, back.fingerprint());
    String page = browser.get("/study").body();
    assertTrue(page.contains(fingerprint), "the page shows the study of the files");
  }
}
