package org.twinrig.hostile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.KnownKeys;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;

/**
 * A study.yaml that would blow up a careless reader is refused in words, or read as it is meant.
 */
class YamlBombTest {
  @TempDir Path temp;
  private Lab lab;

  @BeforeEach
  void copy() throws IOException {
    lab = Lab.in(temp.resolve("lab"));
  }

  private String sound() throws IOException {
    return new String(lab.sound("study.yaml"), StandardCharsets.UTF_8);
  }

  private String answer(String yaml) throws IOException {
    Files.writeString(lab.file("study.yaml"), yaml);
    try {
      return StudyReader.read(lab.study()).value().title();
    } catch (UnusableInput e) {
      return e.getMessage();
    }
  }

  /** Of all problems the one of the same line. */
  private static String line(String answer, int place) {
    return answer.lines().filter(l -> l.indexOf(' ') == place).findFirst().orElse(answer);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          a: &a [x, x]\\nb: &b [*a, *a]\\nc: [*b, *b]       | study.yaml:1: anchors are not used here; take the `&` name out
          title: *a                                         | study.yaml:1: aliases are not used here; repeat the value
          a: &a\\n  b: *a                                   | study.yaml:1: anchors are not used here; take the `&` name out
          title: t\\n<<: { from: plate }                    | study.yaml:2: unknown key `<<`; known keys here: KEYS
          title: !!java.net.URL [x]                         | study.yaml:1: the tag `tag:yaml.org,2002:java.net.URL` is not used here; take out what begins with `!`
          !!javax.script.ScriptEngineManager [ ]            | study.yaml:1: the tag `tag:yaml.org,2002:javax.script.ScriptEngineManager` is not used here; take out what begins with `!`
          title: !local x                                   | study.yaml:1: the tag `!local` is not used here; take out what begins with `!`
          ? [a, b]\\n: c                                    | study.yaml:1: a key is no plain word; known keys here: KEYS
          title: a\\0b                                      | study.yaml:1: holds a zero byte: the file is UTF-16 text or no text at all; save it as UTF-8
          title: a\\nfrom: \\33[31m                      | study.yaml:2: the character U+001B is not allowed; take it out
          """)
  void isRefused(String yaml, String message) throws IOException {
    assertEquals(
        message.replace("KEYS", KnownKeys.listed()),
        line(answer(yaml.translateEscapes()), message.indexOf(' ')));
  }

  @Test
  void tenThousandLevelsAreRefused() throws IOException {
    String deep = "is nested too deep for a study; close the brackets";
    assertEquals("study.yaml:1: " + deep, answer("title: " + "[".repeat(10_000)));
    assertEquals("study.yaml:1: " + deep, answer("{a: ".repeat(10_000)));
    StringBuilder indents = new StringBuilder();
    for (int level = 0; level < 500; level++) {
      indents.append(" ".repeat(level)).append("a:\n");
    }
    assertEquals("study.yaml:13: " + deep, answer(indents.toString()));
    assertEquals("study.yaml:1: " + deep, answer("- ".repeat(10_000) + "x"));
  }

  @Test
  void hugeDocumentIsRefused() throws IOException {
    assertEquals(
        "study.yaml: is 300000 bytes long, but at most 262144 are believable; check that this is"
            + " the file you mean",
        answer("#".repeat(300_000)));
    assertEquals(
        "study.yaml:1: `title` stands in line 1 already; keep one of them",
        line(answer("{" + "title: x, ".repeat(20_000) + "}"), 13));
  }

  @Test
  void repeatedKeyIsRefused() throws IOException {
    assertEquals(
        "study.yaml:30: `seed` stands in line 25 already; keep one of them",
        answer(sound() + "seed: 8\n"));
  }

  @Test
  void endlessNumberIsRefused() throws IOException {
    assertEquals(
        "study.yaml:14: `confidence` is `1e999999`; write a share from 0.5 to 0.9999, such as 0.95"
            + " for 95 %",
        line(answer(sound().replace("confidence: 0.9", "confidence: 1e999999")), 14));
    assertEquals(
        "study.yaml:25: `seed` is `"
            + "9".repeat(988)
            + "…; write a whole number of at most 18 digits",
        answer(sound().replace("seed: 7", "seed: " + "9".repeat(100_000))));
  }

  @Test
  void byteOrderMarkAndWindowsLineEndsAreRead() throws IOException {
    assertEquals("Plate to head", answer("\uFEFF" + sound()));
    assertEquals("Plate to head", answer(sound().replace("\n", "\r\n")));
    assertEquals("Plate to head", answer("\uFEFF" + sound().replace("\n", "\r\n")));
  }

  @Test
  void everySettingIsReadThroughWindowsLineEnds() throws IOException, UnusableInput {
    Study before = StudyReader.read(lab.study()).value();
    Files.writeString(lab.file("study.yaml"), "\uFEFF" + sound().replace("\n", "\r\n"));
    assertEquals(before.settings(), StudyReader.read(lab.study()).value().settings());
  }
}
