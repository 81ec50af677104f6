package org.twinrig.hostile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.intake.CaptureFile;
import org.twinrig.intake.LabTable;
import org.twinrig.internal.Sha256;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.StudyReader;
import org.twinrig.translation.CatalogueReader;
import org.twinrig.translation.TranslationFile;

/** What is too large is refused before it is in memory, with the limit and what to do. */
class LargeFileTest {
  private static final long GIGABYTE = 1L << 30;

  @TempDir Path temp;
  private Lab lab;

  @BeforeEach
  void copy() throws IOException {
    lab = Lab.in(temp.resolve("lab"));
  }

  private static String refusal(Executable reading) {
    return assertThrows(UnusableInput.class, reading).problems().get(0).text();
  }

  /** A file that takes no room on the disk. */
  private Path sparse(String name, String begin, long bytes) throws IOException {
    Path file = lab.file(name);
    Files.deleteIfExists(file);
    try (RandomAccessFile large = new RandomAccessFile(file.toFile(), "rw")) {
      large.write(begin.getBytes(StandardCharsets.ISO_8859_1));
      large.setLength(bytes);
    }
    return file;
  }

  @Test
  void captureOfAGigabyteIsRefused() throws IOException {
    String message =
        "c: the file has 1024.0 MB, but at most 64 MB are read; export this one curve as text";
    Path text = sparse("text.csv", "20,85.3\n", GIGABYTE);
    assertEquals(message, refusal(() -> CaptureFile.read(text, "c")));
    Path sound = sparse("sound.wav", "RIFF\0\0\0\40WAVE", GIGABYTE);
    assertEquals(message, refusal(() -> CaptureFile.read(sound, "c")));
  }

  @Test
  void studyOfAGigabyteIsRefused() throws IOException {
    sparse("study.yaml", "title: t\n", GIGABYTE);
    assertEquals(
        "study.yaml: is 1073741824 bytes long, but at most 262144 are believable;"
            + " check that this is the file you mean",
        refusal(() -> StudyReader.read(lab.study())));
  }

  @Test
  void tablesOfAGigabyteAreRefused() throws IOException {
    String message =
        ".csv: is 1073741824 bytes long, but at most 33554432 are believable;"
            + " check that this is the file you mean";
    for (String table : new String[] {"units", "captures", "sessions"}) {
      sparse(table + ".csv", "unit,kind\n", GIGABYTE);
      assertEquals(table + message, refusal(() -> StudyReader.read(lab.study())));
      Files.write(lab.file(table + ".csv"), lab.sound(table + ".csv"));
    }
    Path graphs = sparse("graphs.csv", "graph\n", GIGABYTE);
    assertEquals("g" + message, refusal(() -> CatalogueReader.read(graphs, "g.csv")));
  }

  @Test
  void translationOfAGigabyteIsRefused() throws IOException {
    Path file = sparse("translation.json", "{", GIGABYTE);
    assertEquals(
        "t.json: is 1073741824 bytes long, but at most 33554432 are believable;"
            + " check that this is the file you mean",
        refusal(() -> TranslationFile.read(file, "t.json")));
  }

  @Test
  void fingerprintOfAFileIsTakenBlockByBlock() throws IOException {
    // head -c 100000000 /dev/zero | sha256sum (GNU coreutils 9.1)
    assertEquals(
        "a993f8c574e0fea8c1cdcbcd9408d9e2e107ee6e4d120edcfa11decd53fa0cae",
        Sha256.hex(sparse("zeros", "", 100_000_000)));
  }

  @Test
  void soundThatPromisesFourGigabytesIsRefused() throws IOException {
    String head = "RIFF\377\377\377\376WAVEfmt \20\0\0\0\1\0\1\0\200\273\0\0\0\167\1\0\2\0\20\0";
    Path riff = sparse("sound.wav", head + "data\0\1\0\0", 300);
    assertEquals(
        "c: the sound file is cut off: the head promises 4278190087 bytes, but the file has 300;"
            + " copy the file again, or export it again",
        refusal(() -> CaptureFile.read(riff, "c")));
    Path data =
        sparse("sound.wav", "RIFF\0\0\0\0" + head.substring(8) + "data\376\377\377\377", 300);
    assertEquals(
        "c: the sound file is cut off: the chunk 'data' promises 4294967294 bytes, but the file"
            + " has 300; copy the file again, or export it again",
        refusal(() -> CaptureFile.read(data, "c")));
  }

  @Test
  void captureOfFiveMillionPointsIsRefused() throws IOException {
    Path file = Files.writeString(lab.file("many.csv"), "hz,db\n" + "20,1\n".repeat(5_000_000));
    assertEquals(
        "c:1048577: the file goes on after 1048576 lines, which are the most that are read;"
            + " export this one curve with fewer points",
        refusal(() -> CaptureFile.read(file, "c")));
  }

  @Test
  void numberOfAMegabyteOfDigitsIsNone() throws IOException {
    Path file =
        Files.writeString(lab.file("long.csv"), "hz;db\n20;1\n30;2\n40;" + "1".repeat(1 << 20));
    assertEquals(
        "c:4: the level '"
            + "1".repeat(47)
            + "…' is not a number; write numbers without thousands marks and"
            + " with one decimal mark, such as 1000.5",
        refusal(() -> CaptureFile.read(file, "c")));
  }

  @Test
  void tableOfTenMillionRowsIsRefused() throws IOException {
    Path file = Files.writeString(lab.file("many.csv"), "unit,kind\n" + "a,\n".repeat(10_000_000));
    assertEquals(
        "t:100002: the table goes on after 100000 rows, which are the most that are read;"
            + " split it into several tables",
        refusal(() -> LabTable.of(file, "t", LabTable.UNITS)));
  }

  @Test
  void tableOfAsManyRowsAsAreReadIsRead() throws Exception {
    Path file = Files.writeString(lab.file("most.csv"), "unit,kind\n" + "a,b\n".repeat(100_000));
    assertEquals(100_000, LabTable.of(file, "t", LabTable.UNITS).size());
  }

  @Test
  void tableWithAnEndlessRowIsRefused() throws IOException {
    String begin = "unit,kind\nA,b\n";
    Path cell = Files.writeString(lab.file("cell.csv"), begin + "x".repeat(18_000_000));
    assertEquals(
        "t:3: a cell has more than 100000 characters, which are the most that are read;"
            + " close the quote it begins with, or check that this is the file you mean",
        refusal(() -> LabTable.of(cell, "t", LabTable.UNITS)));
    Path open = Files.writeString(lab.file("open.csv"), begin + "\"" + "x,y\n".repeat(200_000));
    assertEquals(
        "t:3: a cell has more than 100000 characters, which are the most that are read;"
            + " close the quote it begins with, or check that this is the file you mean",
        refusal(() -> LabTable.of(open, "t", LabTable.UNITS)));
    Path cells = Files.writeString(lab.file("cells.csv"), begin + "x,".repeat(1_000_000));
    assertEquals(
        "t:3: a row has more than 1000 cells, which are the most that are read;"
            + " check that this is the file you mean",
        refusal(() -> LabTable.of(cells, "t", LabTable.UNITS)));
  }
}
