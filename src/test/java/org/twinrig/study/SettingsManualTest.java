package org.twinrig.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The manual's table of keys says what the settings say of themselves. {@code mvn test
 * -Dtest=SettingsManualTest -Dtwinrig.approve=true} writes their lines into the manual, those of
 * new settings too.
 */
class SettingsManualTest {
  private static final Path PAGE = Path.of("studies", "README.md");

  @Test
  void theManualSaysWhatTheSettingsSay() throws Exception {
    String page = Files.readString(PAGE);
    int from = page.indexOf("\n| `" + Setting.ALL.get(0).key() + "` | ") + 1;
    int to = page.indexOf("\n\n", from) + 1;
    StringBuilder lines = new StringBuilder();
    Setting.ALL.forEach(setting -> lines.append(setting.help()).append('\n'));
    String right = page.substring(0, from) + lines + page.substring(to);
    if (Boolean.getBoolean("twinrig.approve")) {
      Files.writeString(PAGE, right);
      return;
    }
    assertEquals(right, page);
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
