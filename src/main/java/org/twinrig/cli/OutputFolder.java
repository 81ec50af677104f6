package org.twinrig.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.StagedFolder;

/** Puts results where the user wants them, and says in words why that does not work. */
final class OutputFolder {
  private OutputFolder() {}

  /** Writes into a folder. */
  @FunctionalInterface
  interface Writer {
    void write(Path folder) throws IOException, UnusableInput;
  }

  /** Writes a result folder as a whole. */
  static void write(Path target, Writer writer) throws CannotWrite, UnusableInput {
    try (StagedFolder staged = StagedFolder.beside(target)) {
      writer.write(staged.path());
      staged.keep();
    } catch (StagedFolder.NotOursException e) {
      throw new CannotWrite(
          target
              + ": the folder holds something that is not an earlier result of twinrig;"
              + " name a new or empty folder with --out",
          e);
    } catch (AccessDeniedException e) {
      throw new CannotWrite(
          target + ": no permission to write here; name another folder with --out", e);
    } catch (FileSystemException e) {
      throw new CannotWrite(
          target
              + ": the results could not be written ("
              + (e.getReason() == null ? "no reason given" : e.getReason())
              + "); earlier results are untouched; make room or name another folder with --out",
          e);
    } catch (IOException e) {
      throw new CannotWrite(
          target
              + ": the results could not be written ("
              + e.getMessage()
              + "); earlier results are untouched; make room or name another folder with --out",
          e);
    }
  }
}
