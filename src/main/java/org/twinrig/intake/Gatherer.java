package org.twinrig.intake;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.twinrig.intake.NamePattern.Part;
import org.twinrig.internal.Sha256;
import org.twinrig.internal.Spreadsheet;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;

/**
 * Finds captures in a folder by their names.
 *
 * <p>Hidden files and folders are passed over; links are not followed. A file that does not fit the
 * pattern, fits it in two ways, or says the same as another is refused; the others stand. Files
 * with the same fault in their names are told of together.
 */
public final class Gatherer {
  private final Path folder;
  private final String source;
  private final NamePattern pattern;
  private final Map<Part, String> given;
  private final List<Problem> problems = new ArrayList<>();
  private final Map<String, GatheredCapture> bySlot = new HashMap<>();
  private final Map<String, String> byContent = new HashMap<>();
  private final Map<String, GatheredCapture> firstOfUnit = new HashMap<>();
  private final List<GatheredCapture> captures = new ArrayList<>();

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

  /** For one folder, which messages call {@code source}; {@code given} holds for all files. */
  public Gatherer(Path folder, String source, NamePattern pattern, Map<Part, String> given) {
    this.folder = folder;
    this.source = source;
    this.pattern = pattern;
    this.given = Map.copyOf(given);
  }

  /**
   * What was found.
   *
   * @param captures in the order of unit, fixture, side and seating
   * @param files how many files were looked at
   */
  public record Found(List<GatheredCapture> captures, int files) {
    public Found {
      captures = List.copyOf(captures);
    }
  }

  /**
   * Looks through the folder, once.
   *
   * @param table the folder of the table that will name the files
   * @return the captures, with what does not fit and what is there twice
   * @throws IOException when the folder cannot be read
   */
  public Findings<Found> gather(Path table) throws IOException {
    List<Path> files = files();
    UnreadNames unread = new UnreadNames(pattern);
    for (Path file : files) {
      String name = slashes(folder.relativize(file));
      List<Map<Part, String>> readings = pattern.readings(name);
      if (readings.size() == 1) {
        Map<Part, String> parts = new EnumMap<>(Part.class);
        parts.putAll(given);
        parts.putAll(readings.get(0));
        take(file, name, new GatheredCapture(slashes(table.relativize(file)), parts));
      } else {
        unread.add(name, readings);
      }
    }
    captures.sort(
        Comparator.comparing((GatheredCapture c) -> c.text(Part.UNIT))
            .thenComparing(c -> c.text(Part.FIXTURE))
            .thenComparing(c -> c.text(Part.SIDE))
            .thenComparing(c -> Integer.valueOf(c.text(Part.SEATING))));
    problems.addAll(unread.problems(source, files.size()));
    return new Findings<>(new Found(List.copyOf(captures), files.size()), problems);
  }

  private void take(Path file, String name, GatheredCapture capture) throws IOException {
    if (Stream.concat(Stream.of(capture.file()), capture.parts().values().stream())
        .anyMatch(Spreadsheet::runsAsFormula)) {
      refuse(
          name,
          "a part of the name begins with =, +, - or @ and would run in a spreadsheet",
          "rename it");
      return;
    }
    String unit = capture.text(Part.UNIT);
    GatheredCapture earlier = bySlot.putIfAbsent(capture.slot(), capture);
    GatheredCapture sibling = firstOfUnit.putIfAbsent(unit, capture);
    String twin = byContent.putIfAbsent(Sha256.hex(file), name);
    if (earlier != null) {
      refuse(
          name,
          capture.slot() + ", is `" + earlier.file() + "` already",
          "give every seating its own number");
    } else if (sibling != null && !sibling.text(Part.KIND).equals(capture.text(Part.KIND))) {
      refuse(
          name,
          String.format(
              Locale.ROOT,
              "unit `%s` is of kind `%s` here and `%s` in `%s`",
              unit,
              capture.text(Part.KIND),
              sibling.text(Part.KIND),
              sibling.file()),
          "a unit has one kind: rename one of them");
    } else {
      captures.add(capture);
      if (twin != null) {
        problems.add(
            Problem.note(
                name,
                0,
                "holds the same bytes as `"
                    + twin
                    + "`; it is taken as a capture all the same: if it is a copy by mistake, export it again"));
      }
    }
  }

  private void refuse(String name, String what, String remedy) {
    problems.add(Problem.refused(name, 0, what, remedy));
  }

  private List<Path> files() throws IOException {
    List<Path> files = new ArrayList<>();
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult preVisitDirectory(Path place, BasicFileAttributes attributes) {
            return !place.equals(folder) && hidden(place)
                ? FileVisitResult.SKIP_SUBTREE
                : FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            if (attributes.isRegularFile() && !hidden(file)) {
              files.add(file);
            }
            return FileVisitResult.CONTINUE;
          }
        });
    files.sort(Comparator.comparing(f -> slashes(folder.relativize(f))));
    return files;
  }

  private static boolean hidden(Path place) {
    Path name = place.getFileName();
    return name != null && name.toString().startsWith(".");
  }

  private static String slashes(Path path) {
    return path.toString().replace('\\', '/');
  }
}
