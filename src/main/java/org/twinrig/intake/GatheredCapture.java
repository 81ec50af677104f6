package org.twinrig.intake;

import java.util.Map;
import java.util.Optional;

/**
 * A file whose name told what it is.
 *
 * @param file path as the table of captures writes it, with forward slashes
 * @param parts what the name, or the lab for all names, said
 */
public record GatheredCapture(String file, Map<NamePattern.Part, String> parts) {

  public GatheredCapture {
    parts = Map.copyOf(parts);
  }

  /**
   * One part.
   *
   * @return its text, empty where nothing was said
   */
  public String text(NamePattern.Part part) {
    return parts.getOrDefault(part, "");
  }

  /** What may be captured only once. */
  String slot() {
    return "`"
        + text(NamePattern.Part.UNIT)
        + "` on `"
        + text(NamePattern.Part.FIXTURE)
        + "`, side "
        + text(NamePattern.Part.SIDE)
        + ", seating "
        + text(NamePattern.Part.SEATING);
  }

  Optional<String> kind() {
    return Optional.ofNullable(parts.get(NamePattern.Part.KIND));
  }
}
