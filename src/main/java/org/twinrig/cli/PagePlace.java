package org.twinrig.cli;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import picocli.CommandLine;

/**
 * Where a user wants a page: in a file, or in a folder that may have to be made.
 *
 * @param inFolder whether it is a folder, and the page goes into it
 */
record PagePlace(Path named, boolean inFolder) {

  /** What is there decides; else a name with the ending of a page is a file. */
  static PagePlace of(String text) {
    Path named = Path.of(text);
    String name = text.toLowerCase(Locale.ROOT);
    boolean slash = name.endsWith("/") || name.endsWith(File.separator);
    boolean file =
        !slash && (name.endsWith(".html") || name.endsWith(".htm") || Files.isRegularFile(named));
    return new PagePlace(named, Files.isDirectory(named) || !file);
  }

  /** The page's file. */
  Path file() {
    return inFolder ? named.resolve(ExplainCommand.FILE) : named;
  }

  /** Whether no folder has to be made; a file's own folder never is. */
  boolean folderIsThere() {
    return !inFolder || Files.isDirectory(named);
  }

  /**
   * Refuses a folder that cannot be made, before any time is spent.
   *
   * @throws CannotWrite when something else is in its way
   */
  void checkFolder() throws CannotWrite {
    if (folderIsThere()) {
      return;
    }
    Path above = named.toAbsolutePath().normalize();
    while (above != null && !Files.exists(above)) {
      above = above.getParent();
    }
    if (above == null || !Files.isDirectory(above)) {
      throw refused("cannot be made a folder, because `" + above + "` is a file", null);
    }
    if (!Files.isWritable(above)) {
      throw refused("no permission to make this folder", null);
    }
  }

  /**
   * Makes the folder where it is missing.
   *
   * @throws CannotWrite when it cannot be made
   */
  void makeFolder() throws CannotWrite {
    if (folderIsThere()) {
      return;
    }
    try {
      Files.createDirectories(named);
    } catch (IOException e) {
      throw refused("the folder could not be made (" + e.getMessage() + ")", e);
    }
  }

  private CannotWrite refused(String why, IOException cause) {
    return new CannotWrite(named + ": " + why + "; name another place with --out", cause);
  }

  /** Keeps the slash at the end, which a path does not. */
  static final class Converter implements CommandLine.ITypeConverter<PagePlace> {
    @Override
    public PagePlace convert(String text) {
      Main.path(text);
      return of(text);
    }
  }
}
