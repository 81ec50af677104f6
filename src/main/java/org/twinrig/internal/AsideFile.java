package org.twinrig.internal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Objects;

/** A file that appears as a whole or not at all: written beside its place and moved there. */
public final class AsideFile {
  private AsideFile() {}

  /** Writes a file. */
  @FunctionalInterface
  public interface Writer {
    /**
     * Writes a file.
     *
     * @param file where to
     * @throws IOException when it cannot be written
     */
    void write(Path file) throws IOException;
  }

  /**
   * Where a file is written before it is moved.
   *
   * @param target where it shall be
   * @return a hidden name beside it, this process's own
   */
  public static Path of(Path target) {
    String name = Objects.requireNonNull(target.getFileName(), "a file").toString();
    return target.resolveSibling("." + name + ".writing-" + ProcessHandle.current().pid());
  }

  /**
   * Makes the empty file that is written before it is moved. What lies in its place is removed: an
   * earlier process of the same number may have left it, or someone a link to another file.
   *
   * @param target where it shall be
   * @return the file, new and no link
   * @throws IOException when it cannot be made
   */
  public static Path create(Path target) throws IOException {
    Path aside = of(target);
    Files.deleteIfExists(aside);
    return Files.createFile(aside);
  }

  /**
   * Writes a file beside its place and moves it there.
   *
   * @param target where it shall be; replaced when it is there
   * @param writer writes it
   * @throws IOException when it cannot be written or moved; the target is then as it was
   */
  public static void replace(Path target, Writer writer) throws IOException {
    Path aside = create(target);
    try {
      writer.write(aside);
      Files.move(aside, target, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(aside);
    }
  }
}
