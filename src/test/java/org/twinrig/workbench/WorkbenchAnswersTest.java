package org.twinrig.workbench;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Doubts stand first, and are answered in the tables they are about. */
class WorkbenchAnswersTest extends OpenWorkbench {
  private String page(String path) throws Exception {
    return browser.get(path).body();
  }

  /** Adds a later session to each fixture, in which another pinna was noted. */
  static void changePinna(Browser browser) throws Exception {
    List<String> rows = new ArrayList<>();
    for (String row : browser.content("sessions.csv").lines().toList()) {
      rows.add(row + (rows.isEmpty() ? ",pinna" : ",P-1"));
    }
    int cells = rows.get(0).split(",", -1).length;
    for (String fixture : List.of("plate", "head")) {
      String late = fixture + "-late,2026-12-30," + fixture + ",94,94";
      rows.add(late + ",".repeat(cells - 5) + "P-2");
    }
    Files.writeString(browser.file("sessions.csv"), String.join("\n", rows) + "\n");
    assertEquals(303, browser.post("/reload", Map.of()).statusCode());
  }

  private HttpResponse<String> answer(String state, String reason, String... chosen)
      throws Exception {
    Map<String, String> fields = new TreeMap<>(Map.of("state", state, "cause", "1"));
    fields.put("reason", reason);
    for (String each : chosen) {
      fields.put(each, "on");
    }
    return browser.post("/answer", fields);
  }

  @Test
  void aDoubtIsAnsweredOpenedAgainAndUndone() throws Exception {
    changePinna(browser);
    byte[] before = Files.readAllBytes(browser.file("sessions.csv"));
    String page = page("/");
    assertTrue(page.indexOf("id=\"claims\"") < page.indexOf("class=\"doubts\""), "first");
    assertTrue(page.contains("<b>Specimen changed: 2 sessions.</b>"), page);
    assertTrue(page.contains("name=\"of-1\" checked"), page);

    HttpResponse<String> none = answer("2", "the same pinna, relabelled");
    assertEquals(400, none.statusCode());
    assertTrue(
        none.body()
            .contains("the form: no doubt is chosen; go back and choose those that the reason"),
        none.body());
    HttpResponse<String> two = answer("2", "relabelled; the same", "of-0");
    assertTrue(
        two.body()
            .contains(
                "the reason: holds a `;`, which stands between the answers to several doubts;"),
        two.body());
    assertArrayEquals(before, Files.readAllBytes(browser.file("sessions.csv")));

    assertEquals(303, answer("2", "the same pinna, relabelled", "of-0", "of-1").statusCode());
    String table = browser.content("sessions.csv");
    assertTrue(table.lines().findFirst().orElseThrow().endsWith(",pinna,confirmed"), table);
    String cell = ",P-2,\"specimen changed: the same pinna, relabelled\"";
    assertEquals(2, table.lines().filter(l -> l.endsWith(cell)).count(), table);
    page = page("/");
    assertFalse(page.contains("<b>Specimen changed"), page);
    assertTrue(page.contains("This has no row in a table. It is mended, not answered"), page);
    assertTrue(page.contains("<summary>1 doubt answered</summary>"), page);
    assertTrue(page.contains("<i>Answered: the same pinna, relabelled</i>"), page);
    assertTrue(page.contains(", because the same pinna, relabelled."), page);

    assertEquals(303, browser.post("/open-again", Map.of("state", "3", "cause", "1")).statusCode());
    assertFalse(browser.content("sessions.csv").contains("relabelled"));
    assertTrue(page("/").contains("<b>Specimen changed: 2 sessions.</b>"));
    browser.post("/undo", Map.of("revision", "4"));
    assertEquals(table, browser.content("sessions.csv"));
    browser.post("/undo", Map.of("revision", "5"));
    assertArrayEquals(before, Files.readAllBytes(browser.file("sessions.csv")));
  }

  @Test
  void anAnswerIsRefusedWhereTheTableOrTheStudyChangedMeanwhile() throws Exception {
    changePinna(browser);
    String mine = browser.content("sessions.csv") + "# by hand\n";
    Files.writeString(browser.file("sessions.csv"), mine);
    HttpResponse<String> refused = answer("2", "the same pinna", "of-0");
    assertEquals(409, refused.statusCode());
    assertTrue(refused.body().contains("sessions.csv has changed on the disk"), refused.body());
    assertEquals(mine, browser.content("sessions.csv"));
    assertEquals(409, answer("1", "the same pinna", "of-0").statusCode());
    assertEquals(mine, browser.content("sessions.csv"));
  }

  /** What screening only reports of a capture is confirmed in its row. */
  @Test
  void aConfirmedCaptureIsNoLongerInDoubt() throws Exception {
    WorkbenchDoubtsTest.leak(browser, 2);
    WorkbenchDoubtsTest.suggest(browser);
    browser.post("/reload", Map.of());
    Browser.Chosen first = browser.first();
    String link = "name=" + Pages.query(first.unit()) + "#entry-2\"";
    assertTrue(page("/").contains(link), page("/"));
    Map<String, String> row = Map.of("revision", "2", "line", "2", "unit", first.unit());
    Map<String, String> fields = new TreeMap<>(row);
    fields.put("reason", "vented on purpose");
    assertEquals(303, browser.post("/confirm", fields).statusCode());
    String table = browser.content("captures.csv");
    assertTrue(table.lines().toList().get(1).endsWith(",odd seating: vented on purpose"), table);
    assertFalse(page("/").contains(link), page("/"));
    String unit = page(Pages.unit(first.unit()));
    assertTrue(unit.contains("counts, confirmed: odd seating: vented on purpose"), unit);
    fields.put("revision", "3");
    assertEquals(303, browser.post("/doubt-again", fields).statusCode());
    assertTrue(page("/").contains(link), page("/"));
  }

  /** Two rows that name one file: one of them is not what it is listed as. */
  static void sameGraph(Browser browser) throws Exception {
    List<String> rows = new ArrayList<>(browser.content("catalogue.csv").lines().toList());
    String[] first = rows.get(1).split(",", -1);
    String[] second = rows.get(2).split(",", -1);
    second[3] = first[3];
    rows.set(2, String.join(",", second));
    Files.writeString(browser.file("catalogue.csv"), String.join("\n", rows) + "\n");
  }

  @Test
  void aDoubtAboutAGraphIsAnsweredInTheCatalogue() throws Exception {
    sameGraph(browser);
    String run = browser.finish(browser.post("/catalogue-run", Map.of()));
    String page = page("/catalogue");
    assertTrue(page.contains("Same as ("), page);
    assertTrue(page.contains("<td>check first</td>"), page);
    String state = run.substring(run.indexOf("id=") + 3);
    Map<String, String> fields =
        Map.of("state", state, "cause", "0", "reason", "measured once, listed twice");
    browser.finish(browser.post("/answer-graphs", fields));
    String table = browser.content("catalogue.csv");
    assertTrue(
        table.lines().toList().get(2).endsWith(",\"same as: measured once, listed twice\""), table);
    page = page("/catalogue");
    assertFalse(page.contains("<td>check first</td>"), page);
    assertTrue(page.contains("<i>Answered: measured once, listed twice</i>"), page);
    HttpResponse<String> old = browser.post("/answer-graphs", fields);
    assertEquals(400, old.statusCode());
    assertTrue(
        old.body().contains("the study or the graphs are not what the page showed; re-express"),
        old.body());
    assertEquals(table, browser.content("catalogue.csv"));
  }

  @Test
  void graphsThatWereSentHaveNoTableToAnswerIn() throws Exception {
    sameGraph(browser);
    Map<String, byte[]> files = new TreeMap<>();
    byte[] graph = Files.readAllBytes(browser.file("catalogue").resolve(first()));
    files.put("a.csv", graph);
    files.put("b.csv", graph);
    files.put(
        "catalogue.csv",
        "graph,unit,kind,file,confirmed\na,A 1,in-ear,a.csv,\nb,B 1,in-ear,b.csv,\n"
            .getBytes(UTF_8));
    browser.finish(browser.upload(files));
    String page = page("/catalogue");
    assertTrue(page.contains("Same as ("), page);
    assertFalse(page.contains("./answer-graphs"), page);
    assertTrue(page.contains("These graphs were sent: there is no table to write an"), page);
    files.put(
        "catalogue.csv",
        "graph,unit,kind,file,confirmed\na,A 1,in-ear,a.csv,\nb,B 1,in-ear,b.csv,one unit\n"
            .getBytes(UTF_8));
    browser.finish(browser.upload(files));
    assertTrue(page("/catalogue").contains("<i>Answered: one unit</i>"), page("/catalogue"));
  }

  private String first() throws Exception {
    try (var graphs = Files.list(browser.file("catalogue"))) {
      return graphs.map(f -> f.getFileName().toString()).sorted().findFirst().orElseThrow();
    }
  }
}
