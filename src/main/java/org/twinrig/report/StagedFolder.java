package org.twinrig.report;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.stream.Stream;

/**
 * A result folder that appears as a whole or not at all: it is written beside its place and moved
 * there when finished. A run that dies leaves the previous results as they were; what it had
 * written stays beside them until the next run, which may go on from there.
 *
 * <p>While a run writes it holds a lock beside the folder, so that a second run on the same folder
 * is refused and not mixed in.
 */
public final class StagedFolder implements AutoCloseable {
  /** Every finished result folder holds this file; a folder without it is not ours to replace. */
  public static final String MARKER = "run.json";

  private final Path target;
  private final Path staging;
  private final Path earlier;
  private final FolderLock lock;
  private final boolean unfinishedStays;
  private boolean kept;

  private StagedFolder(Path target, FolderLock lock, boolean unfinishedStays) {
    this.target = target;
    this.staging = beside(target, ".writing");
    this.earlier = beside(target, ".earlier");
    this.lock = lock;
    this.unfinishedStays = unfinishedStays;
  }

  /** What becomes of the unfinished results of a run that stopped. */
  public enum Unfinished {
    /** They are removed, whoever left them. */
    REMOVED,
    /** What another run left is removed; what this run leaves stays. */
    LEFT,
    /** The run goes on with what another one left, and leaves its own. */
    CONTINUED
  }

  /**
   * Starts a result folder.
   *
   * @param target where it shall be
   * @param unfinished what becomes of unfinished results
   * @return the folder to write into
   * @throws NotOursException when the target exists, is not empty and is not an earlier result
   * @throws LinkException when the target is a link
   * @throws BusyException when another run writes to the same place
   * @throws IOException when no folder can be made beside the target
   */
  public static StagedFolder beside(Path target, Unfinished unfinished) throws IOException {
    Path place = target.toAbsolutePath().normalize();
    if (Files.isSymbolicLink(place)) {
      throw new LinkException(target);
    }
    Files.createDirectories(place.resolve("..").normalize());
    FolderLock lock = FolderLock.take(beside(place, ".lock"), target);
    try {
      StagedFolder folder = new StagedFolder(place, lock, unfinished != Unfinished.REMOVED);
      folder.recover();
      if (!replaceable(place)) {
        throw new NotOursException(target);
      }
      if (unfinished != Unfinished.CONTINUED || holdsLinks(folder.staging)) {
        delete(folder.staging);
      }
      // Not createTempDirectory: the results must be as readable as any folder the user makes.
      Files.createDirectories(folder.staging);
      return folder;
    } catch (IOException e) {
      lock.close();
      throw e;
    }
  }

  private static Path beside(Path place, String ending) {
    Path parent = place.resolve("..").normalize();
    return parent.resolve("." + parent.relativize(place) + ending);
  }

  /** A run that died between its two moves left the earlier results beside their place. */
  private void recover() throws IOException {
    if (Files.isSymbolicLink(earlier)) {
      Files.delete(earlier); // not of this program's making
    }
    if (Files.exists(earlier)) {
      if (Files.exists(target)) {
        delete(earlier);
      } else {
        Files.move(earlier, target);
      }
    }
  }

  /** Thrown when a folder holds something this program did not write. */
  public static final class NotOursException extends IOException {
    private static final long serialVersionUID = 1L;

    NotOursException(Path target) {
      super(target + " exists and holds no earlier results");
    }
  }

  /** Thrown when another run writes to the same folder. */
  public static final class BusyException extends IOException {
    private static final long serialVersionUID = 1L;

    BusyException(Path target) {
      super("another run is writing to " + target);
    }
  }

  /** Thrown when the folder is a link: moving results into its place would cut it. */
  public static final class LinkException extends IOException {
    private static final long serialVersionUID = 1L;

    LinkException(Path target) {
      super(target + " is a link");
    }
  }

  /** This program makes no links; writing through one would change another file. */
  private static boolean holdsLinks(Path folder) throws IOException {
    if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      return false;
    }
    try (Stream<Path> all = Files.walk(folder)) {
      return all.anyMatch(Files::isSymbolicLink);
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
   * @return a folder to be moved; empty unless it continues
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

  /** Whether nothing was written yet that a later run could go on with. */
  private static boolean holdsNothing(Path folder) throws IOException {
    try (Stream<Path> all = Files.walk(folder)) {
      return all.noneMatch(Files::isRegularFile);
    }
  }

  /** Removes what was not kept, unless a later run may go on with it, and gives up the lock. */
  @Override
  public void close() throws IOException {
    try (lock) {
      if (!kept && Files.exists(staging) && (!unfinishedStays || holdsNothing(staging))) {
        delete(staging);
      }
    }
  }

  private static void delete(Path folder) throws IOException {
    if (!Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
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
