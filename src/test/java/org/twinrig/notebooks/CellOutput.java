package org.twinrig.notebooks;

import java.util.ArrayList;
import java.util.Base64;
import java.util.List;

/** What a cell gave, in order: text that was printed, pictures that were displayed. */
sealed interface CellOutput {

  /** Printed text. */
  record Text(String text) implements CellOutput {}

  /** A picture as PNG in base 64. */
  record Picture(String png) implements CellOutput {
    static Picture of(byte[] png) {
      return new Picture(Base64.getEncoder().encodeToString(png));
    }
  }

  /**
   * Outputs as a reader tells them apart: text line by line, of a picture only that it is there.
   * Its bytes depend on the fonts of the machine.
   */
  static List<String> shown(List<CellOutput> outputs) {
    List<String> lines = new ArrayList<>();
    for (CellOutput output : outputs) {
      if (output instanceof Text text) {
        text.text.lines().forEach(lines::add);
      } else {
        lines.add("[picture]");
      }
    }
    return lines;
  }
}
