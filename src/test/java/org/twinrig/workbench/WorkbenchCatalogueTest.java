package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.twinrig.Dense;
import org.twinrig.cli.Main;
import org.twinrig.problem.Problem;
import org.twinrig.reliability.Reason;
import org.twinrig.translation.CatalogueReader;

/** Old graphs that are sent, and those of the study. */
class WorkbenchCatalogueTest extends OpenWorkbench {
  private static final Map<String, String> IN_EAR =
      Map.of("all-kind", "in-ear", "all-form", "raw", "all-seatings", "1");

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
    browser.finish(browser.state(browser.upload(files), IN_EAR));
    String page = browser.get("/catalogue").body();
    assertTrue(page.contains("&lt;b&gt;one") || page.contains("b&gt;.csv"), page);
    assertTrue(page.contains(">two.csv</a>"), page);
    assertTrue(page.contains("<li>spoiled.csv: "), page);
    assertTrue(page.contains("2 of 2 graphs shown"), page);
    HttpResponse<String> table = browser.get("/graph.csv?name=two.csv");
    assertEquals(
        "attachment; filename=\"two-csv-re-expressed.csv\"",
        table.headers().firstValue("Content-Disposition").orElseThrow());
    assertTrue(
        table
            .body()
            .startsWith(
                "band_hz,from_db,to_db,low_db,high_db,whole_low_db,whole_high_db,mark,reasons,level\n"));
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

  /** The sentence is the one that the catalogue report of the command line gives. */
  @Test
  void smoothingIsNotStatedUnlessTheSenderStatesIt() throws Exception {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("one.csv", graph());
    files.put("two.csv", graph());
    HttpResponse<String> sent = browser.upload(files);
    String form = browser.get(sent.headers().firstValue("Location").orElseThrow()).body();
    assertTrue(form.contains("name=\"all-smoothing\" value=\"\" placeholder=\"not stated\""), form);
    browser.finish(browser.state(sent, IN_EAR));
    String page = browser.get("/catalogue?find=one").body();
    String sentence = "2 graphs do not state any smoothing and are taken as not smoothed.";
    assertTrue(page.contains("<p>" + sentence + "</p>"), page);
    assertTrue(report(2).contains("<li>" + sentence + "</li>"), "the words of the report");
    Map<String, String> said = new LinkedHashMap<>(IN_EAR);
    said.put("f1-smoothing", "none");
    browser.finish(browser.state(browser.upload(files), said));
    sentence = "1 graph does not state any smoothing and is taken as not smoothed.";
    assertTrue(browser.get("/catalogue").body().contains("<p>" + sentence + "</p>"));
    assertTrue(report(1).contains("<li>" + sentence + "</li>"), "the words of the report");
    said.put("f0-smoothing", "none");
    browser.finish(browser.state(browser.upload(files), said));
    assertFalse(browser.get("/catalogue").body().contains("not state any smoothing"));
  }

  /** The catalogue report of two graphs, so many of which state no smoothing. */
  private String report(int unstated) throws Exception {
    Files.write(browser.file("g.csv"), graph());
    Path table =
        Files.writeString(
            browser.file("two.csv"),
            "graph,unit,kind,file,smoothing\nA,A,in-ear,g.csv,\nB,B,in-ear,g.csv,"
                + (unstated == 2 ? "" : "none")
                + "\n");
    Path out = folder.resolve("translated-" + unstated);
    StringWriter err = new StringWriter();
    int done =
        Main.run(
            new PrintWriter(new StringWriter()),
            new PrintWriter(err, true),
            "translate",
            browser.file(".").toString(),
            "--catalogue",
            table.toString(),
            "--out",
            out.toString());
    assertEquals(0, done, err::toString);
    try (Stream<Path> files = Files.list(out)) {
      Path page = files.filter(f -> f.toString().endsWith(".html")).findFirst().orElseThrow();
      return Files.readString(page);
    }
  }

  /** Every code word in the table is explained below it, and no other. */
  @Test
  void theReasonsThatOccurAreExplained() throws Exception {
    // Graphs end below the top of the range, and 0.1 dB is more than any unit keeps.
    browser.post("/settings", Map.of("revision", "1", "tolerance.reliable_db", "0.1"));
    browser.finish(browser.post("/catalogue-run", Map.of()));
    String page = browser.get("/catalogue").body();
    Set<String> words = new TreeSet<>();
    Pattern.compile("<td class=\"t\">([^<]*)</td>")
        .matcher(page)
        .results()
        .forEach(r -> words.addAll(List.of(r.group(1).split("; ", -1))));
    words.remove("");
    assertTrue(words.contains("wide prediction"), words::toString);
    Map<String, String> legend = new TreeMap<>();
    Pattern.compile("<dt>([^<]*)</dt><dd>([^<]*)</dd>")
        .matcher(page)
        .results()
        .forEach(r -> legend.put(r.group(1), r.group(2)));
    assertEquals(words, legend.keySet());
    for (Reason reason : Reason.values()) {
      if (words.contains(reason.word())) {
        assertEquals(reason.plain(), legend.get(reason.word()));
      }
    }
    String none = browser.get("/catalogue?find=no-graph-of-this-name").body();
    assertFalse(none.contains("What the reasons mean"), none);
  }

  @Test
  void moreThanIsTakenIsRefused() throws Exception {
    HttpResponse<String> broken =
        browser.send(
            browser
                .request("/catalogue")
                .header("Origin", browser.origin())
                .header("Content-Type", "multipart/form-data; boundary=xyz")
                .POST(HttpRequest.BodyPublishers.ofString("--xyz\r\nContent-Disp"))
                .build());
    assertEquals(400, broken.statusCode(), broken.body());
    assertTrue(broken.body().contains("the form did not arrive whole; send it again"));
    HttpResponse<String> large =
        browser.upload(Map.of("large.csv", new byte[Incoming.MOST_BYTES_A_FILE + 1]));
    assertEquals(413, large.statusCode(), large.body());
    assertTrue(large.body().contains("At most 200 files of at most 4 MB each"), large.body());
    Map<String, byte[]> huge = Map.of("huge.csv", new byte[40_000_000]);
    for (HttpResponse<String> refused :
        List.of(browser.upload(huge), browser.uploadInChunks(huge))) {
      assertEquals(413, refused.statusCode(), refused.body());
      assertTrue(
          refused
              .body()
              .contains(
                  "At most 200 files of at most 4 MB each, and 32 MB in all, are taken at once."
                      + " Nothing was read; send fewer, or list them in catalogue.csv and run"
                      + " `twinrig translate`."),
          refused.body());
    }
    Map<String, byte[]> many = new LinkedHashMap<>();
    for (int k = 0; k <= Incoming.MOST_FILES; k++) {
      many.put("g" + k + ".csv", new byte[] {'1'});
    }
    assertEquals(413, browser.upload(many).statusCode());
    HttpResponse<String> none = browser.upload(Map.of());
    assertEquals(400, none.statusCode());
    assertTrue(none.body().contains("no file was chosen"));
  }

  private byte[] graph() throws Exception {
    try (Stream<Path> graphs = Files.list(browser.file("catalogue"))) {
      return Files.readAllBytes(graphs.sorted().findFirst().orElseThrow());
    }
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** A reference of 10 dB everywhere changes nothing after pinning; a tilted one does. */
  private static final String TILTED =
      Dense.text(new double[] {10, 1000, 22_000}, new double[] {0, 0, 12});

  @Test
  void whatAFormSaysIsWhatACatalogueWouldSay() throws Exception {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("one, \u00fc.csv", graph());
    files.put("two.csv", graph());
    files.put("tilted.csv", bytes(TILTED));
    HttpResponse<String> sent = browser.upload(files);
    String form = browser.get(sent.headers().firstValue("Location").orElseThrow()).body();
    assertTrue(form.contains("<summary>one, \u00fc.csv</summary>"), form);
    Map<String, String> said = new LinkedHashMap<>(IN_EAR);
    said.put("all-smoothing", "none");
    said.put("f1-form", "compensated");
    said.put("f1-reference", "tilted.csv");
    said.put("f1-reference_smoothing", "none");
    said.put("f1-seatings", "3");
    said.put("f1-sides", "2");
    browser.finish(browser.state(sent, said));
    String page = browser.get("/catalogue").body();
    assertTrue(page.contains("2 of 2 graphs shown"), page);
    String byForm = browser.get("/graph.csv?name=two.csv").body();
    String raw = browser.get("/graph.csv?name=" + Pages.query("one, \u00fc.csv")).body();
    assertNotEquals(raw, byForm);
    // The same said by a table that comes along, its files in a folder of the lab's.
    files.put(
        "catalogue.csv",
        bytes(
            """
            graph,unit,kind,file,seatings,sides,form,reference,reference_smoothing,smoothing
            G-1,Rowan 32,in-ear,"old/one, \u00fc.csv",1,,raw,,,none
            G-2,Rowan 33,in-ear,old/two.csv,3,2,compensated,tilted.csv,none,none
            """));
    browser.finish(browser.upload(files));
    assertEquals(byForm, browser.get("/graph.csv?name=G-2").body());
    assertEquals(raw, browser.get("/graph.csv?name=G-1").body());
    assertTrue(browser.get("/catalogue").body().contains(">Rowan 33</td>"));
  }

  /** A sender may call a file what another one bears on the disk; each stays itself. */
  @Test
  void noNameLeadsToAnotherFile() throws Exception {
    byte[] plain = graph();
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("one.csv", plain);
    browser.finish(browser.state(browser.upload(files), IN_EAR));
    String alone = browser.get("/graph.csv?name=one.csv").body();
    files.put(Upload.onDisk(0), bytes(TILTED));
    files.put("#=cmd().csv", bytes(TILTED));
    files.put("..", bytes(TILTED));
    browser.finish(browser.state(browser.upload(files), IN_EAR));
    assertEquals(alone, browser.get("/graph.csv?name=one.csv").body());
    String tilted = browser.get("/graph.csv?name=" + Pages.query("#=cmd().csv")).body();
    assertEquals(tilted, browser.get("/graph.csv?name=" + Upload.onDisk(0)).body());
    assertEquals(tilted, browser.get("/graph.csv?name=..").body());
    assertNotEquals(alone, tilted);
  }

  @Test
  void aWrongStatementIsRefusedInTheWordsOfTheCommandLine() throws Exception {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("one.csv", graph());
    files.put("two.csv", graph());
    Map<String, String> said = new LinkedHashMap<>(IN_EAR);
    said.put("all-smoothing", "1/99");
    said.put("f1-seatings", "many");
    said.put("f0-sides", "2");
    HttpResponse<String> refused = browser.state(browser.upload(files), said);
    assertEquals(400, refused.statusCode());
    // The same table, read as every command reads it.
    Path table =
        Files.writeString(
            folder.resolve("by-hand.csv"),
            """
            graph,unit,kind,file,seatings,sides,smoothing
            one.csv,one.csv,in-ear,one.csv,1,2,1/99
            two.csv,two.csv,in-ear,two.csv,many,,1/99
            """);
    List<Problem> read = CatalogueReader.read(table, "by-hand.csv").problems();
    assertEquals(3, read.size(), read::toString);
    for (Problem p : read) {
      String words = ": " + p.what() + "; " + p.remedy() + "</li>";
      assertTrue(refused.body().contains(words), words + refused.body());
    }
    assertTrue(refused.body().contains("<li>all files: `smoothing` is `1/99`"), refused.body());
    assertTrue(refused.body().contains("<li>two.csv: "), refused.body());
    assertTrue(refused.body().contains("value=\"many\""), "what was said stays on the page");
    said.put("all-smoothing", "none");
    said.put("f1-seatings", "");
    said.put("f1-form", "compensated");
    said.put("f1-reference", Statement.OWN_REFERENCE);
    browser.finish(browser.state(browser.upload(files), said));
    assertTrue(
        browser
            .get("/catalogue")
            .body()
            .contains(
                "<li>two.csv: the compensated graph names no `reference`, and the study has none"
                    + " for its old fixture; name the file of the curve that was subtracted, or"
                    + " give the raw graph</li>"));
  }

  /** A slip in a table that comes along is told as the command line tells it. */
  @Test
  void aKindTheStudyDoesNotHaveIsTold() throws Exception {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("one.csv", graph());
    files.put("catalogue.csv", bytes("graph,unit,kind,file\nG,U,in-eer,one.csv\n"));
    browser.finish(browser.upload(files));
    String page = browser.get("/catalogue").body();
    assertTrue(page.contains("<li>catalogue.csv:2: the study from `"), page);
    assertTrue(page.contains("` has no kind `in-eer`, so 1 graph of it is not translated"), page);
  }

  @Test
  void aTableMustNameWhatWasSent() throws Exception {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put("one.csv", graph());
    files.put("left.csv", graph());
    files.put(
        "Catalogue.CSV",
        bytes("graph,unit,kind,file\nG,U,in-ear,one.csv\nH,U,in-ear,../gone.csv\n"));
    browser.finish(browser.upload(files));
    String page = browser.get("/catalogue").body();
    assertTrue(page.contains("1 of 1 graph shown"), page);
    assertTrue(
        page.contains(
            "<li>catalogue.csv:3: no file, or more than one, was sent for `../gone.csv`; send it"
                + " along with catalogue.csv, under a name of its own</li>"),
        page);
    assertTrue(
        page.contains("<li>left.csv: was sent, but no row of catalogue.csv names it</li>"), page);
    files.put("Catalogue.CSV", bytes("graph,unit\nG,U\n"));
    String place = browser.finish(browser.upload(files));
    assertTrue(browser.get(place).body().contains("<li>catalogue.csv:1: "), place);
    HttpResponse<String> alone =
        browser.upload(Map.of("catalogue.csv", bytes("graph,unit,kind,file\n")));
    assertEquals(400, alone.statusCode());
    assertTrue(alone.body().contains("only catalogue.csv was chosen"));
    HttpResponse<String> gone = browser.get("/sent?upload=999");
    assertEquals(400, gone.statusCode());
    assertTrue(gone.body().contains("these files are not here any more; go to the old graphs"));
  }
}
