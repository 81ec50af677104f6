package org.twinrig.translation;

import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;
import org.twinrig.internal.Sha256;

/** A translation.json that was changed, with the checksum of what it holds now. */
public final class Sealed {
  private Sealed() {}

  /** The text with its line {@code sha256} made anew; unchanged where it has none. */
  public static String text(String changed) {
    String others =
        changed
            .lines()
            .filter(line -> !line.matches("[ \t]*\"sha256\".*"))
            .collect(Collectors.joining("\n", "", "\n"));
    return changed.replaceFirst(
        "\"sha256\" ?: \"[0-9a-f]*\"",
        "\"sha256\" : \"" + Sha256.hex(others.getBytes(StandardCharsets.UTF_8)) + "\"");
  }
}
