package org.twinrig.study;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.twinrig.intake.NearestName;

/**
 * The folder a study's files may lie in. A name in one of the lab's files that leads out of it, by
 * {@code ..}, by an absolute path or by a link, is refused: a study from elsewhere must not read
 * what it was not given. There are no links in its own path.
 */
public record DataRoot(Path root) {
  private static final Pattern ABSOLUTE = Pattern.compile("[/~].*|[A-Za-z]:.*", Pattern.DOTALL);
  private static final int MOST_NEIGHBOURS = 10_000;

  /** Where a name leads. */
  public sealed interface Place {
    /** To a file or folder inside the root: the path without links in it. */
    record Inside(Path path) implements Place {}

    /** Nowhere that may be used: what is wrong with the name, and what would be right. */
    record Refused(String what, String remedy) implements Place {}
  }

  /**
   * Finds a file by the name another file gives it, relative to the folder of that, which has no
   * links in its path.
   */
  public Place file(Path folder, String name) {
    return file(folder, name, Set.of());
  }

  /** Finds a file; where it is missing, files that other rows name already are no guess. */
  Place file(Path folder, String name, Set<String> named) {
    Optional<Place> amiss = spelling(name);
    if (amiss.isPresent()) {
      return amiss.get();
    }
    Path path = folder.resolve(name);
    if (!path.normalize().startsWith(root)) {
      return refused(
          name,
          "leaves the data root",
          "name a file inside it, or widen `data_root` in study.yaml");
    }
    if (Files.exists(path)) {
      return real(path, name);
    }
    if (Files.isSymbolicLink(path)) { // a link in a circle is one that leads nowhere, too
      return refused(
          name, "is a link that leads nowhere", "put the file itself in the place of the link");
    }
    return leadsOut(path.resolveSibling("")) ? linkOut(name) : absent(path, name, named);
  }

  /** What is wrong with a name before any file is looked at. */
  static Optional<Place> spelling(String name) {
    if (ABSOLUTE.matcher(name).matches()) {
      return Optional.of(
          refused(
              name,
              "is an absolute path",
              "write it relative to the folder of the file that names it, so that the study can move"));
    }
    if (name.indexOf('\\') >= 0) {
      return Optional.of(
          refused(name, "has a backslash", "write `" + name.replace('\\', '/') + "`"));
    }
    try {
      return Path.of(name).toString().isBlank()
          ? Optional.of(refused(name, "names nothing", "write the name of a file"))
          : Optional.empty();
    } catch (InvalidPathException e) {
      return Optional.of(
          refused(
              name,
              "cannot be the name of a file here",
              "correct the name, or set a locale of UTF-8, such as LC_ALL=C.UTF-8"));
    }
  }

  private Place real(Path path, String name) {
    try {
      Path real = path.toRealPath();
      if (!real.startsWith(root)) {
        return linkOut(name);
      }
      return Files.isRegularFile(real)
          ? new Place.Inside(real)
          : refused(name, "is no file", "name a file");
    } catch (IOException e) {
      return refused(name, "cannot be reached", "check the file's permissions");
    }
  }

  private static Place linkOut(String name) {
    return refused(
        name,
        "is a link that leads out of the data root",
        "copy the file into the data root, or widen `data_root` in study.yaml");
  }

  /** Whether the closest folder that is there lies outside: nothing is told of what is in it. */
  private boolean leadsOut(Path folder) {
    Path there = folder;
    while (!Files.exists(there)) {
      there = there.resolveSibling("");
    }
    try {
      return !there.toRealPath().startsWith(root);
    } catch (IOException e) {
      return true;
    }
  }

  private static Place absent(Path path, String name, Set<String> named) {
    String before = name.substring(0, name.lastIndexOf('/') + 1);
    Path folder = path.resolveSibling("");
    if (!Files.isDirectory(folder)) {
      // Told by the folder, so that a hundred files in it are one slip and not a hundred.
      List<String> beside = neighbours(folder.resolveSibling(""), Files::isDirectory);
      return missing("folder", before.substring(0, before.length() - 1), beside);
    }
    List<String> there = neighbours(folder, Files::isRegularFile);
    String ending = ending(name);
    String stem = name.substring(before.length(), name.length() - ending.length());
    Optional<String> renamed =
        there.stream().filter(found -> found.equals(stem + ending(found))).findFirst();
    if (!ending.isEmpty() && renamed.isPresent()) { // told by the ending, for the same reason
      String other = ending(renamed.get());
      return new Place.Refused(
          String.format(
              "the file ends in `%s` in %s, not in `%s`",
              other.isEmpty() ? "nothing" : other,
              before.isEmpty() ? "this folder" : "folder `" + before + "`",
              ending),
          "write the names with their endings as they are");
    }
    List<String> free = there.stream().filter(found -> !named.contains(before + found)).toList();
    return missing("file", name, free);
  }

  private static String ending(String name) {
    int dot = name.lastIndexOf('.');
    return dot > name.lastIndexOf('/') + 1 ? name.substring(dot) : "";
  }

  private static Place missing(String noun, String name, List<String> there) {
    String before = name.substring(0, name.lastIndexOf('/') + 1);
    String guess =
        NearestName.among(name.substring(before.length()), there)
            .map(near -> "did you mean `" + before + near + "`? ")
            .orElse("");
    return new Place.Refused(
        "there is no " + noun + " `" + name + "`",
        guess + "names are relative to the folder of the file that names them");
  }

  /** Only for a guess in a message, so a folder that cannot be listed gives none. */
  private static List<String> neighbours(Path folder, Predicate<Path> wanted) {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(wanted)
          .map(file -> file.getFileName().toString())
          .sorted()
          .limit(MOST_NEIGHBOURS)
          .toList();
    } catch (IOException e) {
      return List.of();
    }
  }

  private static Place refused(String name, String what, String remedy) {
    return new Place.Refused("`" + name + "` " + what, remedy);
  }
}
