package org.twinrig.report;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.twinrig.internal.Disk;
import org.twinrig.internal.Sha256;
import org.twinrig.problem.UnusableInput;

/**
 * A folder of results, written as a whole or not at all, and never over anything but results of the
 * same kind that are as this program wrote them: a {@link Manifest} in the folder says so. Whatever
 * else lies in its place makes the run refuse, before it works and in one sentence.
 */
public final class ResultFolder {
  private final Path target;
  private final Kind kind;
  private final RunInputs inputs;
  private final Host host;
  private final Disk disk;

  /** What sort of results a folder holds; only the same sort replaces it. */
  public enum Kind {
    STUDY,
    /** Of {@code translate} with a catalogue. */
    CATALOGUE,
    /** Of {@code translate} with a reference curve. */
    REFERENCE,
    PLAN,
    COMPARISON;

    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /**
   * Who writes results.
   *
   * @param elsewhere what the user can do when results cannot go to a place, one clause
   * @param tell takes what the user must know of files that were moved
   */
  public record Host(String elsewhere, int threads, Consumer<String> tell) {}

  @FunctionalInterface
  public interface Writer<T> {
    /** Writes them, and answers what became of it; refuses when there are no results. */
    T write(Path folder) throws IOException, UnusableInput;
  }

  private ResultFolder(Path target, Kind kind, RunInputs inputs, Host host, Disk disk) {
    this.target = target;
    this.kind = kind;
    this.inputs = inputs;
    this.host = host;
    this.disk = disk;
  }

  /**
   * A place for results, looked at before any work is done.
   *
   * @throws UnusableInput when something else lies there, or the results would spoil an input
   */
  public static ResultFolder at(Path target, Kind kind, RunInputs inputs, Host host)
      throws UnusableInput {
    return at(target, kind, inputs, host, new Disk());
  }

  static ResultFolder at(Path target, Kind kind, RunInputs inputs, Host host, Disk disk)
      throws UnusableInput {
    ResultFolder folder = new ResultFolder(target, kind, inputs, host, disk);
    try {
      Staging place = folder.place();
      place.bringBack(host.tell());
      place.refuseForeign();
      folder.check(place);
    } catch (IOException e) {
      throw folder.failed(e);
    }
    return folder;
  }

  public Path target() {
    return target;
  }

  private Staging place() {
    return new Staging(RealPlace.of(target), disk, host.threads());
  }

  /**
   * Writes the results beside their place, forces them to the disk and moves them there.
   *
   * @throws UnusableInput when the results cannot go there, or there are none
   */
  public <T> T write(Writer<T> writer) throws UnusableInput {
    Staging place = place();
    try {
      Files.createDirectories(place.parent());
      Optional<FolderLock> taken = FolderLock.take(place.lock());
      if (taken.isEmpty()) {
        throw refused("another run is writing to this folder", "wait for it");
      }
      FolderLock lock = taken.get();
      try (lock) {
        place.recover(host.tell());
        check(place);
        Path staging = place.begin(host.tell());
        try {
          T written = writer.write(staging);
          place.finish(kind, host.tell());
          return written;
        } finally {
          place.abandon();
        }
      }
    } catch (IOException e) {
      throw failed(e);
    }
  }

  private void check(Staging staging) throws IOException, UnusableInput {
    Path place = staging.target();
    if (Files.isSymbolicLink(place)) {
      throw refused("the folder is a link", "name the folder it leads to");
    }
    Optional<String> clash = inputs.clash(place);
    if (clash.isPresent()) {
      throw refused(clash.get(), "");
    }
    checkAbove(place);
    if (!Files.exists(place)) {
      return;
    }
    if (!Files.isDirectory(place)) {
      throw refused("is a file", "");
    }
    Optional<Manifest> manifest = Manifest.in(place);
    if (manifest.isEmpty()) {
      checkEmpty(place);
    } else if (manifest.get().kind() != kind) {
      throw refused(
          "holds " + manifest.get().kind().word() + " results, not " + kind.word() + " results",
          "remove the folder if you do not need them");
    } else {
      Optional<String> amiss = manifest.get().firstAmiss(place, host.threads());
      if (amiss.isPresent()) {
        throw refused(amiss.get(), "move it away");
      }
    }
  }

  private void checkAbove(Path place) throws IOException, UnusableInput {
    Optional<Path> results = resultsAbove(place);
    if (results.isPresent()) {
      throw refused("lies inside `" + results.get() + "`, which holds results of twinrig", "");
    }
    Path above = place;
    for (Path p = place.getParent(); p != null; p = Files.exists(p) ? null : p.getParent()) {
      above = p;
    }
    if (!Files.isDirectory(above)) {
      throw refused("`" + above + "` is a file, not a folder", "");
    }
    if (!Files.isWritable(above)) {
      throw refused("no permission to write here", "change the permissions of `" + above + "`");
    }
  }

  private void checkEmpty(Path place) throws IOException, UnusableInput {
    if (Manifest.claimedIn(place)) {
      throw refused(
          "`" + Manifest.FILE + "` in it was changed after twinrig had written it",
          "remove the folder if nothing in it is yours");
    }
    Path record = place.resolve(RunRecord.FILE);
    if (Files.isRegularFile(record, LinkOption.NOFOLLOW_LINKS)) {
      throw refused(
          ("`%s` is in it, but no `%s` to tell what twinrig wrote from what is yours, as in results"
                  + " of earlier versions")
              .formatted(RunRecord.FILE, Manifest.FILE),
          "remove the folder if nothing in it is yours");
    }
    try (Stream<Path> inside = Files.list(place)) {
      Optional<String> first =
          inside.map(p -> String.valueOf(p.getFileName())).min(String::compareTo);
      if (first.isPresent()) {
        throw refused("`" + first.get() + "` in it was not written by twinrig", "move it away");
      }
    }
  }

  private UnusableInput refused(String what, String remedy) {
    return UnusableInput.fatal(
        target.toString().isEmpty() ? "." : target.toString(),
        0,
        what,
        remedy.isEmpty() ? host.elsewhere() : remedy + ", or " + host.elsewhere());
  }

  private UnusableInput failed(IOException e) {
    if (e instanceof FileAlreadyExistsException there) {
      return refused("`" + there.getFile() + "` is in the way", "move it away if it is yours");
    }
    if (e instanceof AccessDeniedException) {
      return refused("no permission to write here", "change the permissions");
    }
    return refused(
        "the results could not be written (" + reason(e) + "); earlier results are untouched",
        "make room");
  }

  /** A file system's message repeats the path; its reason does not. */
  private static String reason(IOException e) {
    if (e instanceof FileSystemException f) {
      return f.getReason() == null ? "no reason given" : f.getReason();
    }
    return e.getMessage();
  }

  /** The folder of finished results that a place lies in: what is put there would spoil them. */
  public static Optional<Path> resultsAbove(Path place) throws IOException {
    for (Path above = RealPlace.of(place).getParent(); above != null; above = above.getParent()) {
      if (Manifest.claimedIn(above)) {
        return Optional.of(above);
      }
    }
    return Optional.empty();
  }

  /** Whether results of a kind have a manifest that lists this file with its present content. */
  public static boolean wrote(Path folder, Kind kind, String file) throws IOException {
    Optional<Manifest> manifest = Manifest.in(folder).filter(m -> m.kind() == kind);
    return manifest.isPresent()
        && Files.isRegularFile(folder.resolve(file), LinkOption.NOFOLLOW_LINKS)
        && Sha256.hex(folder.resolve(file)).equals(manifest.get().sha256().get(file));
  }

  /**
   * Puts earlier results back where they were, if a run that was stopped has left them beside their
   * place. For those who want to read them.
   */
  public static void bringBack(Path folder, Consumer<String> tell) throws IOException {
    new Staging(RealPlace.of(folder), new Disk(), 1).bringBack(tell);
  }
}
