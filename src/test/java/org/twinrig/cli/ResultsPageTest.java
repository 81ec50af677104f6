package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.SessionStudy;

/** The page that explains the columns of every result names those that the program writes. */
class ResultsPageTest {
  private static final Path PAGE = Path.of("studies", "README.md");
  private static final Pattern CODE = Pattern.compile("`([^`]+)`");

  /** What the page calls the files of which there is one per graph. */
  @TempDir private static Path place;

  /** Every table that was written, by the page's name of it. */
  private static final Map<String, String> WRITTEN = new TreeMap<>();

  /** One run of every command that writes tables of results, on small studies. */
  @BeforeAll
  static void run() throws IOException {
    String yaml = "check_unit: Oak 1\ndrift: correct";
    Path one = SessionStudy.write(place.resolve("one"), 3, yaml);
    Path two =
        SessionStudy.write(
            place.resolve("two"),
            3,
            yaml,
            (session, hz) -> session.equals("head-01") ? 0.5 : 0.001);
    Path catalogue = place.resolve("catalogue.csv");
    Files.copy(one.resolve("captures/alder-1-plate-1.csv"), place.resolve("old.csv"));
    Files.write(
        catalogue, List.of("graph,unit,kind,file,seatings", "G-1,Rowan 1,open over-ear,old.csv,1"));
    tables("results", "study", one.toString());
    String translation = place.resolve("results/translation.json").toString();
    tables("re-expressed", "translate", translation, "--catalogue", catalogue.toString());
    String curve = place.resolve("old.csv").toString();
    tables("reference", "translate", translation, "--reference", curve);
    tables("plans", "plan", one.toString(), "--units-max", "12", "--seatings-max", "3");
    tables("compared", "compare", one.toString(), two.toString());
    Path explained = place.resolve("explained.html");
    assertRuns("explain", one.toString(), "--out", explained.toString());
    note("explained.html", tableOf(Files.readString(explained)));
  }

  private static void tables(String folder, String... command) throws IOException {
    Path out = place.resolve(folder);
    String[] words = java.util.Arrays.copyOf(command, command.length + 2);
    words[command.length] = "--out";
    words[command.length + 1] = out.toString();
    assertRuns(words);
    for (String file : Ran.files(out)) {
      if (file.endsWith(".csv")) {
        String name = file.replaceFirst("(translated|points)/.*", "$1/<graph>.csv");
        note(name, Files.readString(out.resolve(file)));
      }
    }
  }

  private static void assertRuns(String... words) {
    Ran ran = Ran.of(words);
    assertEquals(0, ran.status(), ran.err());
  }

  private static void note(String name, String table) {
    // Doubts about a study and about a catalogue are listed alike.
    String before = WRITTEN.getOrDefault(name, table);
    assertTrue(
        name.equals("doubts.csv") ? head(before).equals(head(table)) : before.equals(table),
        () -> "two commands write " + name);
    WRITTEN.put(name, table);
  }

  private static String head(String table) {
    return table.lines().findFirst().orElseThrow();
  }

  /** What a page carries as a link to be saved. */
  private static String tableOf(String html) {
    Matcher link = Pattern.compile("\"data:text/csv;charset=utf-8,([^\"]*)\"").matcher(html);
    assertTrue(link.find());
    return URLDecoder.decode(link.group(1), StandardCharsets.UTF_8);
  }

  /** The columns of every table as the page lists them. */
  private static Map<String, List<String>> listed() throws IOException {
    String page = Files.readString(PAGE);
    String section =
        page.substring(page.indexOf("\n## Results\n"), page.indexOf("\n## Limits of files\n"));
    Map<String, List<String>> listed = new TreeMap<>();
    boolean tables = false;
    for (String line : section.lines().toList()) {
      tables = line.equals("| file | one row per | columns |") || (tables && line.startsWith("|"));
      String[] cells = line.split("\\|", -1);
      if (tables && line.startsWith("| `")) {
        assertEquals(5, cells.length, "three cells, none with a bar in it: " + line);
        String file = codes(cells[1]).get(0);
        assertEquals(null, listed.put(file, codes(cells[3])), PAGE + " lists twice " + file);
      }
    }
    return listed;
  }

  private static List<String> codes(String cell) {
    return CODE.matcher(cell).results().map(code -> code.group(1)).toList();
  }

  private static List<String> header(String table) {
    return List.of(table.lines().findFirst().orElseThrow().split(",", -1));
  }

  @Test
  void everyTableIsListedWithItsColumnsInOrderAndNoOther() throws IOException {
    Map<String, List<String>> columns = new TreeMap<>();
    WRITTEN.forEach((file, table) -> columns.put(file, header(table)));
    Map<String, List<String>> listed = listed();
    assertEquals(columns.keySet(), listed.keySet(), PAGE + " against what was written");
    columns.forEach((file, names) -> assertEquals(names, listed.get(file), PAGE + ": " + file));
    assertTrue(columns.size() > 30, "tables were written: " + columns.size());
  }

  /** What the page says of all tables. */
  @Test
  void tablesAreWrittenAsThePageSays() {
    Pattern inNoTable = Pattern.compile("(?i)(^|,)(nan|-?infinity|null|true|false)(,|$)");
    WRITTEN.forEach(
        (file, table) -> {
          assertTrue(table.endsWith("\n"), file);
          assertFalse(table.contains("\r"), file);
          assertFalse(table.startsWith("\uFEFF"), file);
          for (String row : table.lines().toList()) {
            assertFalse(row.startsWith("#"), file + " has a comment line: " + row);
            assertFalse(inNoTable.matcher(row).find(), file + ": " + row);
          }
        });
  }

  /** Frequencies have four decimals, what is in dB or octaves six, wherever there is a number. */
  @Test
  void numbersHaveAsManyDecimalsAsThePageSays() {
    int cells = 0;
    for (Map.Entry<String, String> written : WRITTEN.entrySet()) {
      List<String> names = header(written.getValue());
      for (String row : written.getValue().lines().skip(1).toList()) {
        String[] values = row.split(",", -1);
        // A quoted cell may hold commas; the page's own table has frequencies in whole Hz.
        if (row.contains("\"") || written.getKey().equals("explained.html")) {
          continue;
        }
        for (int k = 0; k < names.size(); k++) {
          String decimals =
              names.get(k).endsWith("_hz") ? "[0-9]+\\.[0-9]{4}" : "-?[0-9]+\\.[0-9]{6}";
          if (names.get(k).matches(".*_(hz|db|octaves)") && !values[k].isEmpty()) {
            assertTrue(values[k].matches(decimals), written.getKey() + ": " + row);
            cells++;
          }
        }
      }
    }
    assertTrue(cells > 1000, "numbers were looked at: " + cells);
  }
}
