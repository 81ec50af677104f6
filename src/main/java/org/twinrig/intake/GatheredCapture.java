package org.twinrig.intake;

import java.util.Locale;
import java.util.Map;
import org.twinrig.intake.NamePattern.Part;

/**
 * A file whose name told what it is.
 *
 * @param file path as the table of captures writes it, with forward slashes
 * @param parts what the name, or the lab for all names, said
 */
public record GatheredCapture(String file, Map<Part, String> parts) {
  public GatheredCapture {
    parts = Map.copyOf(parts);
  }

  /** The text of one part, empty where nothing was said. */
  public String text(Part part) {
    return parts.getOrDefault(part, "");
  }

  /** What may be captured only once. */
  String slot() {
    return String.format(
        Locale.ROOT,
        "`%s` on `%s`, side %s, seating %s",
        text(Part.UNIT),
        text(Part.FIXTURE),
        text(Part.SIDE),
        text(Part.SEATING));
  }
}
