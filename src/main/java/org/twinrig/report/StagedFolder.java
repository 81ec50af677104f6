package org.twinrig.report;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.stream.Stream;

/**
 * A result folder that appears as a whole or not at all: it is written beside its place and moved
 * there when finished. A run that dies leaves the previous results as they were.
 */
public final class StagedFolder implements AutoCloseable {
  /** Every finished result folder holds this file; a folder without it is not ours to replace. */
  public static final String MARKER = "run.json";

  private final Path target;
  private final Path staging;
  private boolean kept;

  private StagedFolder(Path target, Path staging) {
    this.target = target;
    this.staging = staging;
  }

  /**
   * Starts a result folder.
   *
   * @param target where it shall be
   * @return the folder to write into
   * @throws NotOursException when the target exists, is not empty and is not an earlier result
   * @throws IOException when no folder can be made beside the target
   */
  public static StagedFolder beside(Path target) throws IOException {
    Path place = target.toAbsolutePath().normalize();
    if (!replaceable(place)) {
      throw new NotOursException(target);
    }
    Path parent = place.resolve("..").normalize();
    Files.createDirectories(parent);
    // Not createTempDirectory: the results must be as readable as any folder the user makes.
    String mark = Long.toString(ProcessHandle.current().pid());
    Path staging = parent.resolve("." + parent.relativize(place) + ".writing-" + mark);
    if (Files.exists(staging)) {
      delete(staging);
    }
    return new StagedFolder(place, Files.createDirectory(staging));
  }

  /** Thrown when a folder holds something this program did not write. */
  public static final class NotOursException extends IOException {
    private static final long serialVersionUID = 1L;

    NotOursException(Path target) {
      super(target + " exists and holds no earlier results");
    }
  }

  private static boolean replaceable(Path place) throws IOException {
    if (!Files.exists(place)) {
      return true;
    }
    if (!Files.isDirectory(place)) {
      return false;
    }
    try (Stream<Path> inside = Files.list(place)) {
      return Files.isRegularFile(place.resolve(MARKER)) || inside.findAny().isEmpty();
    }
  }

  /**
   * Where to write.
   *
   * @return an empty folder, to be moved
   */
  public Path path() {
    return staging;
  }

  /**
   * Moves the finished folder into place; earlier results are removed only after that.
   *
   * @throws IOException when it cannot be moved; earlier results are then back in their place
   */
  public void keep() throws IOException {
    Path earlier = Path.of(staging + ".earlier");
    boolean replaces = Files.exists(target);
    if (replaces) {
      Files.move(target, earlier);
    }
    try {
      Files.move(staging, target);
    } catch (IOException e) {
      if (replaces) {
        Files.move(earlier, target);
      }
      throw e;
    }
    kept = true;
    if (replaces) {
      delete(earlier);
    }
  }

  /** Removes what was written when it was not kept. */
  @Override
  public void close() throws IOException {
    if (!kept && Files.exists(staging)) {
      delete(staging);
    }
  }

  private static void delete(Path folder) throws IOException {
    Files.walkFileTree(
        folder,
        new SimpleFileVisitor<>() {
          @Override
          public FileVisitResult visitFile(Path file, BasicFileAttributes attributes)
              throws IOException {
            Files.delete(file);
            return FileVisitResult.CONTINUE;
          }

          @Override
          public FileVisitResult postVisitDirectory(Path dir, IOException failure)
              throws IOException {
            if (failure != null) {
              throw failure;
            }
            Files.delete(dir);
            return FileVisitResult.CONTINUE;
          }
        });
  }
}
