package org.twinrig.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The manual's table of keys has every setting in order, what it means, and what holds where it is
 * left out.
 */
class SettingsManualTest {
  private static final Path PAGE = Path.of("studies", "README.md");

  @Test
  void theManualNamesEverySettingAndWhatHoldsWhereItIsLeftOut() throws Exception {
    String page = Files.readString(PAGE);
    int from = page.indexOf("\n| `" + Setting.ALL.get(0).key() + "` | ") + 1;
    List<String> rows = page.substring(from, page.indexOf("\n\n", from)).lines().toList();
    assertEquals(
        Setting.ALL.stream().map(s -> "`" + s.key() + "`, " + unsaid(s)).toList(),
        rows.stream().map(row -> row.split(" [|] ")).map(SettingsManualTest::ends).toList());
  }

  private static String ends(String... cells) {
    assertEquals(3, cells.length, String.join(" | ", cells));
    return cells[0].substring(2) + ", " + cells[2].replaceFirst(" [|]$", "");
  }

  private static String unsaid(Setting<?> setting) {
    Object value = setting.value(Settings.defaults());
    boolean none = value == null || value.equals(List.of());
    return none ? "none" : "`" + StudyText.flow(value) + "`";
  }

  /** The example that hostile files are made from leaves no setting as it is without it. */
  @Test
  void everySettingStandsInTheExample(@TempDir Path temp) throws Exception {
    String example = Files.readString(Path.of("src/test/resources/hostile/yaml/every-key.yaml"));
    LabFolder lab = LabFolder.in(temp.resolve("lab")).write("study.yaml", example);
    Settings read = StudyReader.read(lab.study()).value().settings();
    for (Setting<?> setting : Setting.ALL) {
      assertNotEquals(setting.value(Settings.defaults()), setting.value(read), setting.key());
    }
  }
}
