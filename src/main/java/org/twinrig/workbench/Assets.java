package org.twinrig.workbench;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;

/** The style sheet and the script, out of the program itself. */
final class Assets {
  private Assets() {}

  static Answer of(String name, String type) {
    try (InputStream in = Assets.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program was built without " + name);
      }
      return new Answer(200, type, in.readAllBytes(), Map.of());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
