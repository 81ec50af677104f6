package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.twinrig.problem.UnusableInput;
import org.twinrig.scripting.LabStudy;

/** A study may not widen its own data root: every command that reads one asks for a word. */
class DataRootTest {
  private static final String REFUSED =
      "study.yaml:30: `data_root` is `../../../..`, which is more than the folder around the study,"
          + " and is not confirmed; if the study may read files from there, confirm the folder with"
          + " --data-root, or move the files closer\n";

  @TempDir Path temp;
  private Path study;

  @BeforeEach
  void copy() throws IOException {
    Ran.copy(Path.of("src/test/resources/study/lab"), temp);
    study = Files.move(temp.resolve("studies/plate-to-head"), temp.resolve("studies/deep"));
    Path deeper = Files.createDirectories(temp.resolve("a/b/c"));
    study = Files.move(study, deeper.resolve("study"));
    Path yaml = study.resolve("study.yaml");
    String text = Files.readString(yaml).replace("../../catalogue", "../../../../catalogue");
    Files.writeString(yaml, text + "data_root: ../../../..\n");
  }

  private Ran run(String command, String... more) {
    List<String> words = new ArrayList<>(List.of(command.split(" ")));
    words.replaceAll(
        word -> word.equals("STUDY") ? study.toString() : word.replace("TEMP", temp.toString()));
    words.addAll(List.of(more));
    return Ran.of(words.toArray(String[]::new));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "study STUDY",
        "plan STUDY",
        "compare STUDY STUDY",
        "translate STUDY --catalogue TEMP/catalogue/catalogue.csv --out TEMP/out",
        "explain STUDY",
        "inspect TEMP/catalogue/catalogue.csv --study STUDY",
        "workbench STUDY"
      })
  void isConfirmedByAnOptionOfEveryCommand(String command) {
    Ran ran = run(command);
    assertEquals(1, ran.status());
    assertTrue(ran.err().endsWith(REFUSED), ran.err());
    if (!command.startsWith("workbench")) { // that would go on until it is stopped
      Ran confirmed = run(command, "--data-root", temp.toString());
      assertFalse(confirmed.err().contains("data_root"), confirmed.err());
      assertTrue(confirmed.status() < 2, confirmed.err());
    }
  }

  @Test
  void isConfirmedByAnArgumentOfAScript() throws Exception {
    assertEquals(
        REFUSED.strip(),
        assertThrows(UnusableInput.class, () -> LabStudy.read(study)).getMessage());
    assertFalse(LabStudy.read(study, temp).declared().captures().isEmpty());
  }
}
