package org.twinrig.cli;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.twinrig.internal.AsideFile;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.html.ExplainPage;

/**
 * Where a user wants a page: in a file, or in a folder that may have to be made. It is looked at
 * before the work begins; the page is written beside its place and moved there, and replaces
 * nothing but one that this program wrote and nobody changed.
 *
 * @param inFolder whether it is a folder, and the page goes into it
 */
record PagePlace(Path named, boolean inFolder) {
  private static final long MOST_BYTES = 64L << 20;
  private static final String ELSEWHERE = "name another place with --out";

  static PagePlace in(Path folder) {
    return new PagePlace(folder, true);
  }

  /**
   * What is there decides; else a name with the ending of a page is a file. A slash at the end,
   * which a path does not keep, tells a folder.
   */
  static PagePlace of(String text) {
    Path named = Main.path(text);
    String name = text.toLowerCase(Locale.ROOT);
    boolean slash = name.endsWith("/") || name.endsWith(File.separator);
    boolean file =
        !slash && (name.endsWith(".html") || name.endsWith(".htm") || Files.isRegularFile(named));
    return new PagePlace(named, Files.isDirectory(named) || !file);
  }

  Path file() {
    return inFolder ? named.resolve(ExplainCommand.FILE) : named;
  }

  /**
   * Refuses a place that cannot be written to, before any time is spent.
   *
   * @throws UnusableInput when something is there that may not be replaced, or the folder can
   *     neither be written to nor made; that of a named file is never made
   */
  void check() throws UnusableInput {
    if (inFolder && !Files.isDirectory(named)) {
      checkNewFolder();
      return;
    }
    Path file = file();
    Path above = file.toAbsolutePath().normalize().resolve("..").normalize();
    refuse(Files.isSymbolicLink(file), file, "is a link", "name a file with --out");
    refuse(Files.isDirectory(file), file, "is a folder", "name a file with --out");
    String remedy = "make it first or name another file with --out";
    refuse(!Files.isDirectory(above), file, "there is no such folder", remedy);
    remedy = "name another file with --out";
    refuse(!Files.isWritable(above), file, "no permission to write here", remedy);
    TwinrigCommand.refuseAmongResults(file);
    try {
      refuse(
          Files.exists(file) && !mayBeReplaced(),
          file,
          "is there already, and is not known to be a page of twinrig that nobody changed",
          "move it away, or name another file with --out");
    } catch (IOException e) {
      throw TwinrigCommand.cannot(file, "could not be read", e);
    }
  }

  private boolean mayBeReplaced() throws IOException {
    return Files.isRegularFile(file())
        && Files.size(file()) <= MOST_BYTES
        && ExplainPage.isAsWritten(new String(Files.readAllBytes(file()), StandardCharsets.UTF_8));
  }

  private void checkNewFolder() throws UnusableInput {
    Path there = named.toAbsolutePath().normalize();
    Path above = there.getParent();
    while (!Files.exists(there) && above != null) {
      there = above;
      above = there.getParent();
    }
    String clash = "cannot be made a folder, because `" + there + "` is a file";
    refuse(!Files.isDirectory(there), named, clash, ELSEWHERE);
    refuse(!Files.isWritable(there), named, "no permission to make this folder", ELSEWHERE);
  }

  /** Writes the page, after another look at its place. */
  void write(AsideFile.Writer writer) throws UnusableInput {
    if (inFolder && !Files.isDirectory(named)) {
      try {
        Files.createDirectories(named);
      } catch (IOException e) {
        throw TwinrigCommand.unusable(
            named, "the folder could not be made (" + e.getMessage() + ")", ELSEWHERE);
      }
    }
    check();
    try {
      AsideFile.replace(file(), writer);
    } catch (IOException e) {
      throw TwinrigCommand.cannot(file(), "the page could not be written", e);
    }
  }

  private static void refuse(boolean isWrong, Path place, String what, String remedy)
      throws UnusableInput {
    if (isWrong) {
      throw TwinrigCommand.unusable(place, what, remedy);
    }
  }
}
