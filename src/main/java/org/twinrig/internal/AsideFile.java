package org.twinrig.internal;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;

/** A file that appears as a whole or not at all: written beside its place and moved there. */
public final class AsideFile {
  private AsideFile() {}

  /** Writes a file. */
  @FunctionalInterface
  public interface Writer {
    /** Writes a file. */
    void write(Path file) throws IOException;
  }

  /**
   * Makes the empty file, new and no link, under a hidden name, that is written before it is moved
   * to its place. What lies beside already stays as it is, whatever its name.
   */
  public static Path create(Path target) throws IOException {
    String name = Objects.requireNonNull(target.getFileName(), "a file").toString();
    String aside = "." + name + ".writing-" + ProcessHandle.current().pid();
    for (int k = 1; ; k++) {
      try {
        return Files.createFile(target.resolveSibling(k == 1 ? aside : aside + "-" + k));
      } catch (FileAlreadyExistsException e) {
        // an earlier process of the same number left it, or someone put it there
      }
    }
  }

  /**
   * Writes a file beside its place, forces it to the disk and moves it there, over what is there
   * but never over a link.
   *
   * @throws IOException when it cannot be written or moved; the target is then as it was
   */
  public static void replace(Path target, Writer writer) throws IOException {
    if (Files.isSymbolicLink(target)) {
      throw new IOException("it is a link; name the file it leads to");
    }
    Path aside = create(target);
    try {
      writer.write(aside);
      new Disk().force(aside);
      moved(aside, target);
    } finally {
      Files.deleteIfExists(aside);
    }
  }

  /**
   * Moves a file that was written aside and forced to the disk over the one it replaces, and forces
   * that to the disk.
   */
  public static void moved(Path aside, Path target) throws IOException {
    new Disk().replace(aside, target);
    new Disk().force(target.toAbsolutePath().resolveSibling(""));
  }
}
