package org.twinrig.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Predicate;
import org.twinrig.internal.AsideFile;

/**
 * /** A single page that a user wants in a file: looked at before the work begins, written beside
 * its place and moved there. Nothing is replaced but what this program wrote and nobody changed.
 *
 * @param target where it shall be
 * @param ours tells whether the text of an earlier one may be replaced
 */
record OutputPage(Path target, Predicate<String> ours) {
  private static final long MOST_BYTES = 64L << 20;

  /**
   * Refuses a place that cannot be written to, before any time is spent.
   *
   * @throws CannotWrite when it is a folder, its folder is missing, or something is there that may
   *     not be replaced
   */
  void check() throws CannotWrite {
    if (Files.isSymbolicLink(target)) {
      throw refused("is a link; name a file with --out");
    }
    if (Files.isDirectory(target)) {
      throw refused("is a folder; name a file with --out");
    }
    if (!Files.isDirectory(folder())) {
      throw refused("there is no such folder; make it first or name another file with --out");
    }
    if (!Files.isWritable(folder())) {
      throw refused("no permission to write here; name another file with --out");
    }
    CommonOptions.refuseAmongResults(target);
    try {
      if (Files.exists(target) && !mayBeReplaced()) {
        throw refused(
            "is there already, and is not known to be a page of twinrig"
                + " that nobody changed; move it away, or name another file with --out");
      }
    } catch (IOException e) {
      throw new CannotWrite(target + ": could not be read (" + e.getMessage() + ")", e);
    }
  }

  private boolean mayBeReplaced() throws IOException {
    return Files.isRegularFile(target)
        && Files.size(target) <= MOST_BYTES
        && ours.test(new String(Files.readAllBytes(target), StandardCharsets.UTF_8));
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

  private CannotWrite refused(String why) {
    return new CannotWrite(target + ": " + why, null);
  }
}
