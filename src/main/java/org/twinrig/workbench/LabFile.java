package org.twinrig.workbench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.twinrig.internal.AsideFile;
import org.twinrig.internal.Disk;
import org.twinrig.internal.OrdinaryFile;

/**
 * A file of the lab's as it was last seen. It is written aside and moved into its place, and only
 * while it still is what was last seen: what someone else wrote meanwhile is never overwritten.
 */
public final class LabFile {
  private static final int MOST_LINES_TOLD = 8;

  private final Path path;
  private final byte[] seen;

  private LabFile(Path path, byte[] seen) {
    this.path = path;
    this.seen = seen;
  }

  static LabFile read(Path path) throws IOException {
    return new LabFile(path, OrdinaryFile.at(path).bytes());
  }

  Path path() {
    return path;
  }

  String name() {
    return Objects.requireNonNull(path.getFileName(), "a file").toString();
  }

  byte[] bytes() {
    return seen.clone();
  }

  String text() {
    return new String(seen, StandardCharsets.UTF_8);
  }

  boolean holds(byte[] bytes) {
    return Arrays.equals(seen, bytes);
  }

  /** What someone else changed since the file was seen; nothing when it is as it was. */
  Optional<Change> change() throws IOException {
    byte[] now;
    try {
      now = OrdinaryFile.at(path).bytes();
    } catch (NoSuchFileException e) {
      return Optional.of(new Change(name(), List.of("the file is gone")));
    }
    return Arrays.equals(seen, now)
        ? Optional.empty()
        : Optional.of(new Change(name(), told(lines(seen), lines(now))));
  }

  /**
   * Replaces the file.
   *
   * @throws RefusedException when it is no longer what was seen
   */
  void replace(byte[] bytes) throws IOException, RefusedException {
    Path aside = written(bytes);
    try {
      Optional<Change> change = change();
      if (change.isPresent()) {
        throw change.get().refused();
      }
      AsideFile.moved(aside, path);
    } finally {
      Files.deleteIfExists(aside);
    }
  }

  /** Replaces the file: the file as it is then. */
  LabFile replacedBy(byte[] bytes) throws IOException, RefusedException {
    replace(bytes);
    return new LabFile(path, bytes.clone());
  }

  /** Writes a copy beside the file, safe on the disk, with the file's own permissions. */
  Path written(byte[] bytes) throws IOException {
    Path aside = AsideFile.create(path);
    Files.write(aside, bytes);
    new Disk().force(aside);
    if (FileSystems.getDefault().supportedFileAttributeViews().contains("posix")) {
      Files.setPosixFilePermissions(aside, Files.getPosixFilePermissions(path));
    }
    return aside;
  }

  private static List<String> lines(byte[] bytes) {
    return new String(bytes, StandardCharsets.UTF_8).lines().toList();
  }

  private static List<String> told(List<String> before, List<String> now) {
    List<String> told = new ArrayList<>(without(before, now, "was"));
    told.addAll(without(now, before, "is now"));
    if (told.isEmpty()) {
      return List.of("the order of its lines, or its line ends");
    }
    if (told.size() > MOST_LINES_TOLD) {
      int more = told.size() - MOST_LINES_TOLD;
      told = new ArrayList<>(told.subList(0, MOST_LINES_TOLD));
      told.add("and " + more + " lines more");
    }
    return List.copyOf(told);
  }

  /** The lines that are not among others, with their numbers. */
  private static List<String> without(List<String> lines, List<String> others, String word) {
    Set<String> known = new HashSet<>(others);
    return IntStream.range(0, lines.size())
        .filter(k -> !known.contains(lines.get(k)))
        .mapToObj(k -> "line " + (k + 1) + " " + word + ": " + lines.get(k))
        .toList();
  }

  /** What someone else changed in a file, line by line. */
  public record Change(String file, List<String> lines) {
    /** Said instead of overwriting what someone else wrote. */
    RefusedException refused() {
      return new RefusedException(RefusedException.Why.CHANGED_ON_DISK, file, lines);
    }
  }
}
