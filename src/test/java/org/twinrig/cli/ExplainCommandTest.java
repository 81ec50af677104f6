package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ExplainCommandTest {
  private static final String DEMO = Path.of("studies", "plate-to-head").toString();

  @TempDir private static Path shared;
  private static String small;

  @TempDir private Path folder;

  @BeforeAll
  static void simulate() {
    small = shared.resolve("small").toString();
    Ran made =
        Ran.of(
            ("simulate --seed 3 --units 6 --seatings 2 --kinds in-ear --points 100 --catalogue 2"
                    + " --out "
                    + small)
                .split(" "));
    assertEquals(0, made.status(), made.err());
  }

  @Test
  void thePageIsWrittenIntoAFolderOrAFileAndMayBeWrittenAgain() throws IOException {
    Path inFolder = folder.resolve("explained.html");
    Ran first = Ran.of("explain", DEMO, "--out", folder.toString(), "--quiet");
    assertEquals("", first.err());
    assertEquals(0, first.status());
    assertEquals("Page for readers: " + inFolder + "\n", first.out());
    byte[] page = Files.readAllBytes(inFolder);
    assertEquals(0, Ran.of("explain", DEMO, "--out", folder.toString(), "--threads", "1").status());
    assertArrayEquals(page, Files.readAllBytes(inFolder));
    Path file = folder.resolve("readers.html");
    assertEquals(0, Ran.of("explain", DEMO, "--out", file.toString()).status());
    assertArrayEquals(page, Files.readAllBytes(file));
    String text = Files.readString(file);
    assertTrue(text.contains("<dd>Flat-plate ear simulator</dd>"));
    assertTrue(text.contains("<dd>Head with soft cheeks</dd>"));
  }

  /** A name without the ending of a page is a folder, and so is one with a slash at its end. */
  @Test
  void aFolderThatIsNotThereIsMade() throws IOException {
    Path bare = folder.resolve("page");
    Ran ran = Ran.of("explain", small, "--out", bare.toString(), "--quiet");
    assertEquals("", ran.err());
    assertEquals("Page for readers: " + bare.resolve("explained.html") + "\n", ran.out());
    assertTrue(Files.isRegularFile(bare.resolve("explained.html")));
    Path slashed = folder.resolve("new").resolve("site.html");
    ran = Ran.of("explain", small, "--out", slashed + "/", "--quiet");
    assertEquals("Page for readers: " + slashed.resolve("explained.html") + "\n", ran.out());
    assertTrue(Files.isRegularFile(slashed.resolve("explained.html")));
    Path old = folder.resolve("old.HTM");
    ran = Ran.of("explain", small, "--out", old.toString(), "--quiet");
    assertEquals("Page for readers: " + old + "\n", ran.out());
    ran = Ran.of("explain", small, "--out", old + "/");
    assertEquals(1, ran.status());
    assertEquals(
        old
            + ": cannot be made a folder, because `"
            + old
            + "` is a file; name another place with --out\n",
        ran.err());
  }

  @Test
  void whatIsNotOursIsLeftAlone() throws IOException {
    Path mine = folder.resolve("mine.html");
    Files.writeString(mine, "<!DOCTYPE html><html lang=\"en\">\nyears of work");
    Ran ran = Ran.of("explain", DEMO, "--out", mine.toString());
    assertEquals(1, ran.status());
    assertEquals(
        mine
            + ": is there already, and is not known to be a page of twinrig that nobody changed;"
            + " move it away, or name another file with --out\n",
        ran.err());
    assertTrue(Files.readString(mine).endsWith("years of work"));
    Path nowhere = folder.resolve("no").resolve("page.html");
    ran = Ran.of("explain", DEMO, "--out", nowhere.toString());
    assertEquals(1, ran.status());
    assertEquals(
        nowhere + ": there is no such folder; make it first or name another file with --out\n",
        ran.err());
  }

  @Test
  void aMissingStudyIsTheSameErrorAsForTheStudyCommand() {
    String missing = folder.resolve("nowhere").toString();
    Ran ran = Ran.of("explain", missing);
    assertEquals(1, ran.status());
    assertEquals(Ran.of("study", missing).err(), ran.err());
    assertFalse(ran.err().contains("\tat "), ran.err());
    assertEquals(2, Ran.of("explain").status());
  }

  @Test
  void aStudyWithoutACatalogueIsExplainedBesideItsDeclaration() throws IOException {
    Path study = folder.resolve("study");
    Ran made =
        Ran.of(
            "simulate",
            "--out",
            study.toString(),
            "--seed",
            "3",
            "--units",
            "6",
            "--kinds",
            "in-ear",
            "--points",
            "100");
    assertEquals(0, made.status(), made.err());
    Path yaml = study.resolve("study.yaml");
    Files.writeString(yaml, Files.readString(yaml).replaceAll("(?m)^catalogue:.*\\R", ""));
    Ran ran = Ran.of("explain", study.toString());
    assertEquals(0, ran.status(), ran.err());
    assertTrue(
        Files.readString(study.resolve("explained.html")).contains("<p class=\"small\">Alder"),
        "the example is a headphone of the study");
    Files.writeString(yaml, Files.readString(yaml) + "catalogue: old.csv\n");
    Files.writeString(
        study.resolve("old.csv"), "graph,unit,kind,file\nG-1,Ash 1,in-ear,gone.csv\n");
    Ran gone = Ran.of("explain", study.toString());
    assertEquals(0, gone.status(), gone.err());
    assertTrue(gone.err().contains("gone.csv"), gone.err());
    Files.writeString(study.resolve("old.csv"), "graph,unit,sort,file\n");
    Ran wrong = Ran.of("explain", study.toString());
    assertEquals(0, wrong.status(), wrong.err());
    assertTrue(wrong.err().contains("`sort`"), wrong.err());
  }
}
