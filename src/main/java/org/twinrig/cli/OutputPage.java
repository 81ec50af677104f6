package org.twinrig.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.twinrig.internal.AsideFile;

/**
 * A single page that a user wants in a file: looked at before the work begins, written beside its
 * place and moved there, so that an earlier page stays whole until the new one is.
 *
 * @param target where it shall be
 * @param beginning how the first line of an earlier page begins
 */
record OutputPage(Path target, String beginning) {

  /**
   * Refuses a place that cannot be written to, before any time is spent.
   *
   * @throws CannotWrite when it is a folder, its folder is missing, or it holds something else
   */
  void check() throws CannotWrite {
    if (Files.isDirectory(target)) {
      throw refused("is a folder; name a file with --out");
    }
    if (!Files.isDirectory(folder())) {
      throw refused("there is no such folder; make it first or name another file with --out");
    }
    if (!Files.isWritable(folder())) {
      throw refused("no permission to write here; name another file with --out");
    }
    if (Files.exists(target) && !firstLine().startsWith(beginning)) {
      throw refused("holds something that is not an earlier page; name another file with --out");
    }
  }

  void write(AsideFile.Writer writer) throws CannotWrite {
    check();
    try {
      AsideFile.replace(target, writer);
    } catch (IOException e) {
      throw new CannotWrite(target + ": the page could not be written (" + e.getMessage() + ")", e);
    }
  }

  private Path folder() {
    return target.toAbsolutePath().normalize().resolve("..").normalize();
  }

  private String firstLine() throws CannotWrite {
    try (BufferedReader reader = Files.newBufferedReader(target)) {
      String line = reader.readLine();
      return line == null ? "" : line;
    } catch (MalformedInputException e) {
      return "";
    } catch (IOException e) {
      throw new CannotWrite(target + ": could not be read (" + e.getMessage() + ")", e);
    }
  }

  private CannotWrite refused(String why) {
    return new CannotWrite(target + ": " + why, null);
  }
}
