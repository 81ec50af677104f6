package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.twinrig.internal.Sha256;

/** The same study gives the same bytes wherever it lies and whoever runs it. */
class UnusualPlacesTest {
  private static final Locale LOCALE = Locale.getDefault();
  private static final TimeZone ZONE = TimeZone.getDefault();

  @TempDir static Path temp;
  private static Path sound;
  private static Map<String, String> expected;

  @BeforeAll
  static void simulate() throws IOException {
    sound = temp.resolve("sound");
    Ran made =
        Ran.of(
            "simulate",
            "--seed",
            "1",
            "--units",
            "5",
            "--seatings",
            "2",
            "--kinds",
            "in-ear",
            "--points",
            "100",
            "--out",
            sound.toString());
    assertEquals(0, made.status(), made.err());
    Files.writeString(
        sound.resolve("study.yaml"),
        Files.readString(sound.resolve("study.yaml"))
            + "bands: { per_octave: 1, from_hz: 100, to_hz: 8000 }\n");
    expected = results(sound, temp.resolve("expected"));
  }

  @AfterEach
  void putBack() {
    Locale.setDefault(LOCALE);
    TimeZone.setDefault(ZONE);
  }

  /** The SHA-256 of every result but the record of the run, which names times and places. */
  private static Map<String, String> results(Path study, Path out) throws IOException {
    Ran ran = Ran.of("study", study.toString(), "--out", out.toString(), "--quiet");
    assertEquals(0, ran.status(), ran.err());
    Map<String, String> results = new TreeMap<>();
    for (String file : Ran.files(out)) {
      if (Ran.repeats(file)) {
        results.put(file, Sha256.hex(out.resolve(file)));
      }
    }
    return results;
  }

  private static Path copy(Path target) throws IOException {
    try (Stream<Path> all = Files.walk(sound)) {
      for (Path each : all.toList()) {
        Files.copy(each, target.resolve(sound.relativize(each).toString()));
      }
    }
    return target;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "-two  blanks ",
        "it's \"100 %\" & <b> {x} $HOME `id` ;#",
        "Prüfstände 頭部と板",
        "long-long-long-long-long-long-long-long-long-long-long-long-long-long-long-long-long-long"
            + "-long-long-long-long-long-long-long-long-long-long-long-long-long-long-long-long"
      })
  void folderMayHaveAnyName(String name) throws IOException {
    Path folder;
    try {
      folder = Files.createDirectory(temp.resolve(name));
      Files.delete(folder);
    } catch (InvalidPathException | IOException e) {
      assumeTrue(false, "this system cannot name it");
      return;
    }
    assertEquals(expected, results(copy(folder), temp.resolve("out of " + name.hashCode())));
  }

  @ParameterizedTest
  @ValueSource(strings = {"tr-TR", "de-DE", "ar-EG-u-nu-arab"})
  void localeChangesNothing(String tag) throws IOException {
    Locale.setDefault(Locale.forLanguageTag(tag));
    TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Kiritimati"));
    assertEquals(expected, results(sound, temp.resolve("out-" + tag)));
  }

  @Test
  void studyMayBeReadOnly() throws IOException {
    Path study = copy(temp.resolve("read-only"));
    try (Stream<Path> all = Files.walk(study)) {
      for (Path each : all.toList()) {
        assertTrue(each.toFile().setWritable(false));
      }
    }
    try {
      assertEquals(expected, results(study, temp.resolve("out-read-only")));
    } finally {
      assertTrue(study.toFile().setWritable(true));
      try (Stream<Path> all = Files.walk(study)) {
        all.forEach(each -> assertTrue(each.toFile().setWritable(true)));
      }
    }
  }

  @Test
  void namesMayDifferInCaseOnly() throws IOException {
    Path study = copy(temp.resolve("cases"));
    Path units = study.resolve("units.csv");
    assumeTrue(!Files.exists(study.resolve("UNITS.CSV")), "the disk does not tell cases apart");
    Files.writeString(study.resolve("Units.csv"), "unit,kind\nother,thing\n");
    assertTrue(Files.size(units) > 40);
    assertEquals(expected, results(study, temp.resolve("out-cases")));
  }

  @Test
  void resultsInPlaceOfALinkAreRefused() throws IOException {
    Path elsewhere = Files.createDirectory(temp.resolve("elsewhere"));
    Path link = Files.createSymbolicLink(temp.resolve("link"), elsewhere);
    Ran ran = Ran.of("study", sound.toString(), "--out", link.toString());
    assertEquals(1, ran.status());
    assertEquals(
        link
            + ": the folder is a link; name the folder it leads to, or name another folder with --out",
        ran.err().lines().reduce((a, b) -> b).orElse(""));
    assertTrue(Files.isSymbolicLink(link));
  }
}
