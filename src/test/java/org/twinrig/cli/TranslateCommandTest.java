package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.twinrig.Dense;
import org.twinrig.ReferenceTable;
import org.twinrig.translation.Translation;
import org.twinrig.translation.TranslationFile;

/** Catalogues through the command line: compensated, smoothed, there and back. */
class TranslateCommandTest extends OnACatalogue {

  @Test
  void everyOutputIsThereAndNothingIsLeftBeside() throws IOException {
    Ran ran = translate("out");
    assertEquals(0, ran.status(), ran.err());
    assertTrue(ran.out().startsWith("Of 12 graphs, 12 re-expressed and 0 refused.\n"), ran.out());
    List<String> err = ran.err().lines().toList();
    assertEquals(1, err.size(), ran.err());
    assertTrue(
        err.get(0).startsWith("Note: " + catalogue + ": 1 compensated graph is given raw, "),
        ran.err());
    List<String> files = Ran.files(folder.resolve("out"));
    assertTrue(
        files.containsAll(
            List.of(
                "summary.csv",
                "handling.csv",
                "overview.csv",
                "overview-zones.csv",
                "units-to-measure.csv",
                "report.html",
                "run.json")),
        files.toString());
    assertEquals(12, files.stream().filter(f -> f.startsWith("translated/")).count());
    assertEquals(List.of("catalogue", "catalogue.csv", "out"), beside());
  }

  /** Beyond the day a study is valid until, results say so; up to it no day is in them. */
  @Test
  void useBeyondTheValidityIsDoubted() throws Exception {
    Translation always = TranslationFile.read(translation, "t");
    Translation.Origin from = always.origin();
    Translation.Origin until =
        new Translation.Origin(
            from.title(),
            from.old(),
            from.now(),
            from.anchor(),
            from.fingerprint(),
            from.sessions(),
            Optional.of(LocalDate.of(2027, 3, 31)));
    Path file =
        Files.writeString(
            folder.resolve("until.json"),
            TranslationFile.text(
                new Translation(
                    until,
                    always.anchor(),
                    always.grid(),
                    always.confidence(),
                    always.tolerance(),
                    always.minUnits(),
                    always.handling(),
                    always.kinds(),
                    always.levelShifts())));
    assertEquals(until, TranslationFile.read(file, "t").origin());
    assertEquals(List.of(), validity(file, "2027-03-31"));
    assertEquals(List.of(), validity(translation, "2090-01-01"));
    assertEquals(
        List.of(
            "catalogue,,,,validity passed,1 day,2027-03-31,\"The study was to be used up to that"
                + " day; pads, pinnae and microphones age.\",No number is changed by it. Capture"
                + " some units on both fixtures again; move `valid_until` in study.yaml if they"
                + " still differ as they did.,"),
        validity(file, "2027-04-01"));
    assertTrue(
        Files.readString(folder.resolve("until-2027-04-01/report.html"))
            .contains("The lab holds the study valid until 2027-03-31."));
  }

  private List<String> validity(Path study, String day) throws IOException {
    String out = folder.resolve("until-" + day).toString();
    Ran ran =
        Ran.of(
            "translate",
            study.toString(),
            "--catalogue",
            catalogue.toString(),
            "--out",
            out,
            "--on",
            day);
    assertEquals(0, ran.status(), ran.err());
    return Files.readAllLines(Path.of(out, "doubts.csv")).stream()
        .filter(line -> line.contains("validity"))
        .toList();
  }

  @Test
  void twoRunsOnOneFolderAreNotMixed() throws IOException {
    Path out = folder.resolve("out");
    try (FileChannel held =
        FileChannel.open(
            folder.resolve(".out.lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      assertTrue(held.lock().isValid());
      Ran second = translate("out");
      assertEquals(1, second.status());
      assertEquals(
          out
              + ": another run is writing to this folder; wait for it, or name another folder with"
              + " --out"
              + "\n",
          second.err());
    }
    assertEquals(0, translate("out").status());
  }

  @Test
  void compensatedGraphsStayCompensatedWhenTheNewReferenceIsGiven() throws IOException {
    Files.writeString(
        folder.resolve("old.csv"),
        Dense.text(new double[] {10, 1000, 22_000}, new double[] {3, 0, -6}),
        StandardCharsets.UTF_8);
    Files.writeString(
        folder.resolve("new.csv"),
        Dense.text(new double[] {10, 1000, 22_000}, new double[] {5, 0, -9}),
        StandardCharsets.UTF_8);
    replace(1, "raw,,none", "compensated,old.csv,none");
    Ran raw = translate("raw");
    assertEquals(0, raw.status(), raw.err());
    assertTrue(handling("raw", 1).contains(",compensated,raw,"), handling("raw", 1));
    assertTrue(
        Files.readString(folder.resolve("raw/report.html"))
            .contains(
                "catalogue.csv: 2 compensated graphs are given raw, because no reference curve of"
                    + " `Head with soft cheeks` is known: name it under `references` in study.yaml,"
                    + " or with --subtract"));
    Ran kept =
        translate(
            "kept",
            "--subtract",
            folder.resolve("new.csv").toString(),
            "--subtract-smoothing",
            "1/2");
    assertEquals(0, kept.status(), kept.err());
    assertTrue(
        handling("kept", 1).contains(",compensated,compensated,none,alike,old.csv,,new.csv,1/2,"),
        handling("kept", 1));
    assertTrue(Files.readString(folder.resolve("kept/report.html")).contains("Compensated graphs"));
  }

  private String handling(String out, int row) throws IOException {
    return Files.readAllLines(folder.resolve(out).resolve("handling.csv")).get(row);
  }

  @Test
  void aSmoothedGraphGoesThroughAStudySmoothedAlike() throws IOException {
    replace(1, ",none", ",1/3");
    Ran byFile = translate("file");
    assertEquals(0, byFile.status(), byFile.err());
    assertTrue(handling("file", 1).contains(",1/3,marked,"), handling("file", 1));
    Ran byStudy =
        Ran.of(
            "translate",
            STUDY.toString(),
            "--catalogue",
            catalogue.toString(),
            "--out",
            folder.resolve("study").toString());
    assertEquals(0, byStudy.status(), byStudy.err());
    assertTrue(
        handling("study", 1).contains(",1/3,study smoothed as the graph,"), handling("study", 1));
  }

  @Test
  void aReferenceIsReExpressedWithTheIntervalOfTheMean() throws IOException {
    Path curve = folder.resolve("old.csv");
    Files.writeString(
        curve,
        Dense.text(new double[] {10, 1000, 22_000}, new double[] {3, 0, -6}),
        StandardCharsets.UTF_8);
    Ran ran = reference(curve, "--kind", "in-ear");
    assertEquals(0, ran.status(), ran.err());
    assertTrue(
        ran.out().startsWith("Re-expressed with the mean transfer of `in-ear` ("), ran.out());
    List<Map<String, String>> transfer =
        ReferenceTable.rows(translation.resolveSibling("transfer.csv")).stream()
            .filter(row -> row.get("kind").equals("in-ear"))
            .toList();
    List<String> rows = Files.readAllLines(folder.resolve("moved/reference.csv"));
    assertEquals(
        "band_hz,from_db,to_db,ci_low_db,ci_high_db,sim_low_db,sim_high_db,mark,reasons",
        rows.get(0));
    for (int b = 0; b < transfer.size(); b++) {
      Map<String, String> t = transfer.get(b);
      String[] r = rows.get(b + 1).split(",", -1);
      double from = Double.parseDouble(r[1]);
      for (int c = 0; c < 5; c++) {
        String column =
            List.of("offset_db", "ci_low_db", "ci_high_db", "sim_low_db", "sim_high_db").get(c);
        assertEquals(
            Double.parseDouble(t.get(column)),
            Double.parseDouble(r[c + 2]) - from,
            2e-6,
            t.get("band_hz"));
      }
    }
    assertEquals(
        "--kind: a reference needs the kind whose mean transfer is to be applied; kinds of the"
            + " study: open over-ear, closed over-ear, in-ear, on-ear"
            + "\n",
        reference(curve).err());
    assertEquals(
        "--kind: the study has no kind `in-eer`; did you mean `in-ear`? kinds of the study: open"
            + " over-ear, closed over-ear, in-ear, on-ear"
            + "\n",
        reference(curve, "--kind", "in-eer").err());
  }

  private Ran reference(Path curve, String... more) {
    List<String> arguments =
        new ArrayList<>(
            List.of(
                "translate",
                translation.toString(),
                "--reference",
                curve.toString(),
                "--out",
                folder.resolve("moved").toString()));
    arguments.addAll(List.of(more));
    return Ran.of(arguments.toArray(String[]::new));
  }

  @Test
  void thereAndBackThroughTwoStudies() throws IOException {
    Path back = folder.resolve("back.json");
    // The same study read the other way, as a file of its own.
    String text = Files.readString(translation, StandardCharsets.UTF_8);
    Files.writeString(back, text, StandardCharsets.UTF_8);
    Ran wrong = translate("out", "--then", back.toString());
    assertEquals(1, wrong.status());
    assertEquals(
        back
            + ": the study starts from `Flat-plate ear simulator`, but the one before it ends on"
            + " `Head with soft cheeks`; give studies that meet on one fixture, with the same label"
            + " in both"
            + "\n",
        wrong.err());
    assertEquals(
        translation
            + ": a translation file cannot be read the other way: the reverse is fitted anew from"
            + " the captures; give the study's folder with --reverse"
            + "\n",
        translate("out", "--reverse").err());
  }

  @Test
  void optionsThatDoNotGoTogetherAreRefused() {
    assertTrue(
        translate("out", "--kind", "in-ear")
            .err()
            .startsWith(
                "--kind belongs to --reference; a catalogue names the kind of every graph"));
    assertTrue(
        translate("out", "--subtract-smoothing", "1/3")
            .err()
            .startsWith("--subtract-smoothing needs the curve of --subtract"));
    assertEquals(2, translate("out", "--reverse", "--then", "x").status());
  }
}
