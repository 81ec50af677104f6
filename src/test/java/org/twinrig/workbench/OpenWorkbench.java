package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A workbench on a small study of its own, opened before every test and closed without faults. */
abstract class OpenWorkbench {
  @TempDir Path folder;
  Browser browser;

  @BeforeEach
  void open() throws Exception {
    Browser.write(folder.resolve("study"));
    browser = Browser.on(folder.resolve("study"));
  }

  @AfterEach
  void close() {
    browser.close();
    assertEquals(List.of(), browser.faults());
  }
}
