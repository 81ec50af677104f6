package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the lab is told of a catalogue in which something is wrong. */
class CatalogueProblemsTest extends OnACatalogue {
  /** The demonstration names no reference curve of its new fixture. */
  private static final String GIVEN_RAW =
      ": 1 compensated graph is given raw, because no reference curve of `Head with soft cheeks` is"
          + " known: name it under `references` in study.yaml, or with --subtract";

  private static final Pattern SAME = Pattern.compile("\\(in ([0-9]+) rows");

  /** A slip in the kind refuses no graph, but is told where it stands and how it may be mended. */
  @Test
  void aKindTheStudyDoesNotHaveIsTold() throws IOException {
    List<String> rows = rows();
    for (int row : List.of(3, 5)) {
      String[] cells = rows.get(row).split(",", -1);
      cells[2] = row == 3 ? "in_eer" : "headband";
      rows.set(row, String.join(",", cells));
    }
    Files.write(catalogue, rows);
    String typo =
        catalogue
            + ":4: the study from `Flat-plate ear simulator` to `Head with soft"
            + " cheeks` has no kind `in_eer`, so 1 graph of it is not"
            + " translated; did you mean `in-ear`? its kinds: open over-ear, closed over-ear,"
            + " in-ear, on-ear";
    String strange =
        catalogue
            + ":6: the study from `Flat-plate ear simulator` to `Head with soft"
            + " cheeks` has no kind `headband`, so 1 graph of it is not"
            + " translated; its kinds: open over-ear, closed over-ear, in-ear, on-ear";
    Ran ran = translate("out", "--strict");
    assertEquals(0, ran.status(), ran.err());
    assertEquals(List.of("Note: " + typo, "Note: " + strange, "Note: " + GIVEN_RAW), told(ran));
    assertTrue(ran.out().contains(", 2 of them for want of their kind in the study.\n"), ran.out());
    assertEquals("", translate("quiet", "--quiet").err());
    assertTrue(ran.out().startsWith("Of 12 graphs, 12 re-expressed and 0 refused.\n"), ran.out());
    String report = Files.readString(folder.resolve("out/report.html"));
    assertTrue(report.contains("<li>" + typo + "</li>"));
    assertTrue(report.contains("<li>" + strange + "</li>"));
    List<String> summary = Files.readAllLines(folder.resolve("out/summary.csv"));
    assertTrue(summary.get(3).contains(",re-measure,"), summary.get(3));
    assertTrue(summary.get(3).contains(",kind not in the study"), summary.get(3));
    JsonNode json = new ObjectMapper().readTree(translate("again", "--json").out());
    assertEquals(List.of(typo, strange, catalogue + GIVEN_RAW), texts(json.get("notes")));
    assertEquals(List.of(), texts(json.get("problems")));
  }

  /** In = out + refused, whatever happens to the files. */
  @Test
  void nothingIsLostHoweverFilesAreSpoiled() throws IOException {
    Random random = new Random(20261125);
    List<Path> graphs;
    try (Stream<Path> all = Files.list(folder.resolve("catalogue"))) {
      graphs = all.filter(p -> !p.endsWith("house-reference.csv")).sorted().toList();
    }
    List<byte[]> sound =
        graphs.stream()
            .map(
                p -> {
                  try {
                    return Files.readAllBytes(p);
                  } catch (IOException e) {
                    throw new UncheckedIOException(e);
                  }
                })
            .toList();
    List<String> rows = rows();
    for (int trial = 0; trial < 12; trial++) {
      for (int g = 0; g < graphs.size(); g++) {
        spoil(graphs.get(g), sound.get(g), random);
      }
      List<String> spoiled = new ArrayList<>(rows);
      for (int r = 1; r < spoiled.size(); r++) {
        if (random.nextInt(8) == 0) {
          spoiled.set(r, spoiledRow(spoiled.get(r), random));
        }
      }
      Files.write(catalogue, spoiled);
      Ran ran = translate("out");
      assertEquals(0, ran.status(), ran.err());
      int out = Files.readAllLines(folder.resolve("out/summary.csv")).size() - 1;
      long refused =
          ran.err()
              .lines()
              .filter(l -> !l.contains(" a second.") && !l.contains(GIVEN_RAW))
              .mapToLong(l -> rowsToldBy(l))
              .sum();
      assertEquals(12, out + refused, "trial " + trial + ": " + ran.err());
      assertTrue(
          ran.out()
              .startsWith(
                  "Of 12 graphs, " + out + " re-expressed and " + (12 - out) + " refused.\n"),
          ran.out());
      assertEquals(
          out,
          Ran.files(folder.resolve("out")).stream()
              .filter(f -> f.startsWith("translated/"))
              .count());
    }
  }

  private static void spoil(Path file, byte[] sound, Random random) throws IOException {
    byte[] bytes = sound.clone();
    switch (random.nextInt(6)) {
      case 0 -> bytes = new byte[0];
      case 1 -> bytes = java.util.Arrays.copyOf(bytes, random.nextInt(bytes.length));
      case 2 -> {
        for (int k = 0; k < 20; k++) {
          bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
      }
      case 3 -> {
        Files.deleteIfExists(file);
        return;
      }
      default -> {}
    }
    Files.write(file, bytes);
  }

  private static String spoiledRow(String row, Random random) {
    return switch (random.nextInt(4)) {
      case 0 -> row.replace("raw", "cooked");
      case 1 -> row + ",more";
      case 2 -> row.replace("none", "1/999");
      default -> row.replace("catalogue/", "../../");
    };
  }

  @Test
  void aCompensatedGraphWithoutAnyReferenceIsRefused() throws IOException {
    replace(1, "raw,,none", "compensated,,none");
    Ran ran = translate("out");
    assertEquals(0, ran.status());
    assertTrue(
        ran.err()
            .contains(
                catalogue
                    + ":2: the compensated graph names no `reference`, and the study has none"
                    + " for its old fixture; name the file of the curve that was subtracted, or give the"
                    + " raw graph"),
        ran.err());
    assertTrue(ran.out().startsWith("Of 12 graphs, 11 re-expressed and 1 refused."), ran.out());
  }

  /** What is wrong in a row is told by the row, and once for all rows it is wrong in. */
  @Test
  void aMissingReferenceIsToldByTheRowsThatNameIt() throws IOException {
    for (int row : List.of(1, 2, 6)) {
      replace(row, "raw,", "compensated,hose.csv");
    }
    Ran ran = translate("out", "--quiet");
    assertEquals(
        catalogue
            + ":2: `reference`: there is no file `hose.csv` (in 3 rows, lines 2, 3, 7); names are relative"
            + " to the folder of the file that names them",
        told(ran).get(0));
    assertTrue(ran.out().startsWith("Of 12 graphs, 9 re-expressed and 3 refused."), ran.out());
  }

  @Test
  void aSpoiledReferenceIsToldWithItsGraphs() throws IOException {
    replace(1, "raw,", "compensated,old.csv");
    replace(2, "raw,", "compensated,old.csv");
    Files.writeString(folder.resolve("old.csv"), "frequency,level\n100,x\n200,1\n");
    List<String> told = told(translate("out", "--quiet"));
    assertEquals(2, told.size(), told::toString);
    assertTrue(told.get(0).startsWith("old.csv:2: "), told::toString);
    assertEquals(
        catalogue
            + ":2: the graph needs its reference `old.csv`, which cannot be used (in 2"
            + " rows, lines 2, 3); mend that file",
        told.get(1));
  }

  @Test
  void aMissingFolderIsOneSlipAndNotOneForEachFile() throws IOException {
    assertEquals(0, translate("out").status());
    byte[] before = Files.readAllBytes(folder.resolve("out/summary.csv"));
    List<String> rows = rows();
    rows.replaceAll(row -> row.replace("catalogue/g", "catalog/g"));
    Files.write(catalogue, rows);
    Ran ran = translate("out");
    assertEquals(1, ran.status());
    assertEquals(
        catalogue
            + ":2: there is no folder `catalog` (in 12 rows, lines 2 to 13); did you mean"
            + " `catalogue`? names are relative to the folder of the file that names them\n"
            + catalogue
            + ": no graph could be re-expressed; nothing was written; mend the rows above\n",
        ran.err());
    assertArrayEquals(before, Files.readAllBytes(folder.resolve("out/summary.csv")));
    assertEquals(List.of("catalogue", "catalogue.csv", "out"), beside());
    Files.write(catalogue, rows.subList(0, 1));
    assertEquals(
        catalogue
            + ": the catalogue lists no graph; nothing was written; list old"
            + " graphs, one a row\n",
        translate("out").err());
    assertArrayEquals(before, Files.readAllBytes(folder.resolve("out/summary.csv")));
  }

  /** One ending that changed is one slip too. */
  @Test
  void aMissingEndingIsToldOnce() throws IOException {
    for (int row = 2; row <= 12; row++) {
      replace(row, ".csv,", ".txt,");
    }
    assertEquals(
        catalogue
            + ":3: the file ends in `.csv` in folder `catalogue/`, not in `.txt` (in 11 rows, lines 3"
            + " to 13); write the names with their endings as they are",
        told(translate("out")).get(0));
  }

  /**
   * What was said on standard error, the note that the demonstration's catalogue always gets cut.
   */
  private List<String> told(Ran ran) {
    return ran.err().lines().map(l -> l.replace(catalogue + GIVEN_RAW, GIVEN_RAW)).toList();
  }

  private static List<String> texts(JsonNode list) {
    List<String> texts = new ArrayList<>();
    list.forEach(text -> texts.add(text.asText()));
    return texts;
  }

  private static long rowsToldBy(String line) {
    Matcher many = SAME.matcher(line);
    return many.find() ? Long.parseLong(many.group(1)) : 1;
  }
}
