package org.twinrig.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.MalformedInputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.twinrig.internal.AsideFile;
import org.twinrig.internal.OrdinaryFile;

/**
 * A single table, or page, that a user wants in a file: looked at before the work begins, written
 * beside its place and moved there, so that an earlier table stays whole until the new one is.
 *
 * @param target where it shall be
 * @param firstColumns how the first line of an earlier table of the same sort begins
 * @param what it is, for messages
 */
record OutputTable(Path target, String firstColumns, String what) {

  /** A table. */
  OutputTable(Path target, String firstColumns) {
    this(target, firstColumns, "table");
  }

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
    if (Files.exists(target) && !firstLine().startsWith(firstColumns)) {
      throw refused(
          "holds something that is not an earlier " + what + "; name another file with --out");
    }
  }

  void write(AsideFile.Writer writer) throws CannotWrite {
    check();
    try {
      AsideFile.replace(target, writer);
    } catch (IOException e) {
      throw new CannotWrite(
          target + ": the " + what + " could not be written (" + e.getMessage() + ")", e);
    }
  }

  private Path folder() {
    return target.toAbsolutePath().normalize().resolve("..").normalize();
  }

  private String firstLine() throws CannotWrite {
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                OrdinaryFile.at(target).open(), StandardCharsets.UTF_8.newDecoder()))) {
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
