package org.twinrig.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.twinrig.internal.Disk;

/**
 * How results come to their place. They are written into a hidden folder beside it, which says from
 * its first moment that a run writes there; when all of it is on the disk, the two folders are
 * exchanged at once. Where the system cannot, there are two moves, and what a run stopped between
 * them leaves is put back by whoever comes next. Of the results that were replaced, only files that
 * still are as they were written are removed.
 */
final class Staging {
  private static final int MOST_KEPT = 1000;

  private final Path target;
  private final Path staging;
  private final Path earlier;
  private final Disk disk;
  private final int threads;
  private boolean begun;

  Staging(Path target, Disk disk, int threads) {
    this.target = target;
    this.staging = beside(".writing");
    this.earlier = beside(".earlier");
    this.disk = disk;
    this.threads = threads;
  }

  private Path beside(String ending) {
    return parent().resolve("." + target.getFileName() + ending);
  }

  Path target() {
    return target;
  }

  Path parent() {
    return target.resolveSibling("");
  }

  Path lock() {
    return beside(".lock");
  }

  /** Starts an empty folder; what a run that was stopped left in its place is removed. */
  Path begin(Consumer<String> tell) throws IOException {
    refuseForeign();
    if (Manifest.in(staging).isPresent()) {
      remove(staging, tell);
    } else if (Files.exists(staging)) {
      removeUnfinished();
    }
    // Not createTempDirectory: the results must be as readable as any folder the user makes.
    disk.createFolder(staging);
    begun = true;
    disk.write(manifest(staging), Manifest.UNFINISHED.getBytes(StandardCharsets.UTF_8));
    return staging;
  }

  private static Path manifest(Path folder) {
    return folder.resolve(Manifest.FILE);
  }

  /** Refuses what lies under the names a run uses and is not of a run. */
  void refuseForeign() throws IOException {
    for (Path path : List.of(staging, earlier)) {
      if (Files.exists(path, LinkOption.NOFOLLOW_LINKS)
          && Manifest.in(path).isEmpty()
          && !isUnfinished(path)) {
        throw inTheWay(path);
      }
    }
  }

  private static IOException inTheWay(Path path) {
    return new FileAlreadyExistsException(path.toString());
  }

  /** A run that is stopped in its first moments leaves less than the whole line. */
  private static boolean isUnfinished(Path folder) throws IOException {
    if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
      return false;
    }
    List<Path> inside = inside(folder);
    String line = Manifest.fileIn(folder).orElse("");
    boolean nothingElse = inside.isEmpty() || inside.equals(List.of(manifest(folder)));
    return line.equals(Manifest.UNFINISHED)
        || (nothingElse && Manifest.UNFINISHED.startsWith(line));
  }

  private static List<Path> inside(Path folder) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.toList();
    }
  }

  /** The word that says whose folder it is goes last, so that it is true at every moment. */
  private void removeUnfinished() throws IOException {
    List<Path> all;
    try (Stream<Path> walk = Files.walk(staging)) {
      all = walk.sorted(Comparator.reverseOrder()).toList();
    }
    for (Path path : all) {
      if (!path.equals(staging) && !path.equals(manifest(staging))) {
        disk.delete(path);
      }
    }
    if (Files.exists(manifest(staging))) {
      disk.delete(manifest(staging));
    }
    disk.delete(staging);
  }

  void finish(ResultFolder.Kind kind, Consumer<String> tell) throws IOException {
    Manifest made = Manifest.of(staging, kind, threads);
    seal(made);
    disk.forceAll(staging);
    Optional<Path> old = swap();
    begun = false;
    disk.force(parent());
    if (old.isPresent()) {
      try {
        remove(old.get(), tell);
      } catch (IOException e) {
        String told = ": the results are written, but the earlier ones could not be removed (%s);";
        String where = " what is left of them lies in `%s`.";
        tell.accept(target + (told + where).formatted(e.getMessage(), old.get()));
      }
    }
  }

  private void seal(Manifest made) throws IOException {
    Path whole = staging.resolve(Manifest.FILE + ".whole");
    disk.write(whole, made.text().getBytes(StandardCharsets.UTF_8));
    disk.replace(whole, manifest(staging));
  }

  /** The folder that was replaced, where it is now. */
  private Optional<Path> swap() throws IOException {
    if (!Files.exists(target, LinkOption.NOFOLLOW_LINKS)) {
      disk.move(staging, target);
      return Optional.empty();
    }
    if (disk.exchange(staging, target)) {
      return Optional.of(staging);
    }
    disk.move(target, earlier);
    try {
      disk.move(staging, target);
    } catch (IOException e) {
      disk.move(earlier, target);
      throw e;
    }
    return Optional.of(earlier);
  }

  void abandon() throws IOException {
    if (begun && Files.exists(staging)) {
      removeUnfinished();
    }
  }

  /** Under the lock: settles what a run that was stopped between its two moves has left. */
  void recover(Consumer<String> tell) throws IOException {
    if (!Files.exists(earlier, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    boolean folder = Files.isDirectory(earlier, LinkOption.NOFOLLOW_LINKS);
    Optional<Manifest> old = folder ? Manifest.in(earlier) : Optional.empty();
    boolean there = Files.exists(target, LinkOption.NOFOLLOW_LINKS);
    if (old.isPresent() && !there && old.get().isWhole(earlier, threads)) {
      putBack(tell);
    } else if (old.isPresent() && (!there || Manifest.in(target).isPresent())) {
      remove(earlier, tell);
    } else if (folder && inside(earlier).isEmpty()) {
      disk.delete(earlier);
    } else {
      throw inTheWay(earlier);
    }
  }

  /** Without the lock: puts earlier results back if nothing else is in their place. */
  void bringBack(Consumer<String> tell) throws IOException {
    if (Files.exists(target, LinkOption.NOFOLLOW_LINKS)
        || !Files.isDirectory(earlier, LinkOption.NOFOLLOW_LINKS)) {
      return;
    }
    Optional<FolderLock> taken = FolderLock.take(lock());
    if (taken.isPresent()) { // else a run is at work between its two moves
      FolderLock lock = taken.get();
      try (lock) {
        recover(tell);
      }
    }
  }

  private void putBack(Consumer<String> tell) throws IOException {
    disk.move(earlier, target);
    disk.force(parent());
    tell.accept(
        target
            + ": earlier results were put back; a run that was stopped had left them beside it.");
  }

  /** Removes results that were replaced; what is not as it was written stays, and is told. */
  private void remove(Path old, Consumer<String> tell) throws IOException {
    Optional<Manifest> manifest = Manifest.in(old);
    if (manifest.isPresent()) {
      for (Path file : manifest.get().untouched(old, threads)) {
        disk.delete(file);
      }
      for (Path folder : manifest.get().foldersBelow(old)) {
        if (inside(folder).isEmpty()) {
          disk.delete(folder);
        }
      }
    }
    List<Path> left = new ArrayList<>(inside(old));
    if (manifest.isPresent()) {
      left.remove(manifest(old));
    }
    Path last = left.isEmpty() ? old : free();
    if (!left.isEmpty()) {
      disk.move(old, last);
      tell.accept(
          target
              + ": what was not as twinrig had written it in the earlier results is kept in `"
              + last
              + "`.");
    }
    if (manifest.isPresent()) {
      disk.delete(manifest(last));
    }
    if (left.isEmpty()) {
      disk.delete(last);
    }
  }

  /** A plain name beside the target that nothing has. */
  private Path free() throws IOException {
    for (int k = 1; k <= MOST_KEPT; k++) {
      Path kept = parent().resolve(target.getFileName() + (k == 1 ? ".kept" : ".kept-" + k));
      if (!Files.exists(kept, LinkOption.NOFOLLOW_LINKS)) {
        return kept;
      }
    }
    throw new IOException("there are too many folders like `" + target.getFileName() + ".kept`");
  }
}
