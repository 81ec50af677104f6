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

  /** Writes into a folder and says what became of it. */
  @FunctionalInterface
  interface Writer<T> {
    T write(Path folder) throws IOException, UnusableInput;
  }

  /** Writes a result folder as a whole and returns what the writer made of it. */
  static <T> T write(Path target, Writer<T> writer) throws CannotWrite, UnusableInput {
    return write(target, StagedFolder.Unfinished.REMOVED, writer);
  }

  /** Writes a result folder as a whole; unfinished ones may be gone on with. */
  static <T> T write(Path target, StagedFolder.Unfinished unfinished, Writer<T> writer)
      throws CannotWrite, UnusableInput {
    try (StagedFolder staged = StagedFolder.beside(target, unfinished)) {
      T written = writer.write(staged.path());
      staged.keep();
      return written;
    } catch (StagedFolder.NotOursException e) {
      throw new CannotWrite(
          target
              + ": the folder holds something that is not an earlier result of twinrig;"
              + " name a new or empty folder with --out",
          e);
    } catch (StagedFolder.LinkException e) {
      throw new CannotWrite(
          target + ": the folder is a link; name the folder it leads to with --out", e);
    } catch (StagedFolder.BusyException e) {
      throw new CannotWrite(
          target
              + ": another run is writing to this folder; wait for it, or name another folder with"
              + " --out",
          e);
    } catch (AccessDeniedException e) {
      throw new CannotWrite(
          target + ": no permission to write here; name another folder with --out", e);
    } catch (IOException e) {
      throw new CannotWrite(
          target
              + ": the results could not be written ("
              + reason(e)
              + "); earlier results are untouched; make room or name another folder with --out"
              + (unfinished == StagedFolder.Unfinished.REMOVED ? "" : ", or go on with --resume"),
          e);
    }
  }

  /** A file system's message repeats the path; its reason does not. */
  private static String reason(IOException e) {
    if (e instanceof FileSystemException f) {
      return f.getReason() == null ? "no reason given" : f.getReason();
    }
    return e.getMessage();
  }
}
