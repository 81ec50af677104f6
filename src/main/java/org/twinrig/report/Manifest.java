package org.twinrig.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.twinrig.internal.Parallel;
import org.twinrig.internal.Sha256;

/**
 * What twinrig wrote into a result folder: the SHA-256 of every file but its own, in the form that
 * {@code sha256sum -c} of the GNU coreutils reads, after a first line that says what it is. It is
 * believed only as long as it is, byte for byte, what this program writes.
 *
 * @param sha256 by the file's name below the folder, with {@code /} on every system
 */
record Manifest(ResultFolder.Kind kind, SortedMap<String, String> sha256) {
  static final String FILE = "manifest.sha256";

  /** Stands in the manifest's place while a run writes: everything in the folder is that run's. */
  static final String UNFINISHED =
      "# twinrig results, unfinished: a run writes here; nothing in this folder is finished\n";

  private static final String FIRST_WORDS = "# twinrig ";
  private static final String LAST_WORDS = " results; sha256sum -c " + FILE + " checks them";
  private static final Pattern LINE = Pattern.compile("([0-9a-f]{64}) {2}([ -\\[\\]-~]+)");
  private static final long MOST_BYTES = 256L << 20;

  static Manifest of(Path folder, ResultFolder.Kind kind, int threads) throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.walk(folder)) {
      files =
          all.filter(p -> Files.isRegularFile(p, LinkOption.NOFOLLOW_LINKS))
              .filter(p -> !p.equals(folder.resolve(FILE)))
              .toList();
    }
    Manifest made = new Manifest(kind, hashes(folder, files, threads));
    if (!parse(made.text()).equals(Optional.of(made))) {
      throw new IllegalStateException("a result file has a name that a manifest cannot list");
    }
    return made;
  }

  /** The SHA-256 of files of a folder, by their names below it. */
  private static SortedMap<String, String> hashes(Path folder, List<Path> files, int threads)
      throws IOException {
    SortedMap<String, String> hashes = new TreeMap<>();
    try {
      Parallel.map(
              files,
              threads,
              file -> {
                try {
                  return Map.entry(name(folder, file), Sha256.hex(file));
                } catch (IOException e) {
                  throw new UncheckedIOException(e);
                }
              })
          .forEach(hash -> hashes.put(hash.getKey(), hash.getValue()));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    return hashes;
  }

  private static String name(Path folder, Path file) {
    return folder.relativize(file).toString().replace('\\', '/');
  }

  String text() {
    StringBuilder text = new StringBuilder();
    text.append(FIRST_WORDS).append(kind.word()).append(LAST_WORDS).append('\n');
    sha256.forEach((file, hash) -> text.append(hash).append("  ").append(file).append('\n'));
    return text.toString();
  }

  /** The manifest of a folder; nothing when there is none that this program could have written. */
  static Optional<Manifest> in(Path folder) throws IOException {
    return fileIn(folder).flatMap(Manifest::parse);
  }

  /** Whether a folder says that it holds results of this program, finished, changed or not. */
  static boolean claimedIn(Path folder) throws IOException {
    return fileIn(folder).filter(text -> text.startsWith(FIRST_WORDS)).isPresent();
  }

  /** The text under a manifest's name; nothing when that is missing, a link, or no text. */
  static Optional<String> fileIn(Path folder) throws IOException {
    Path file = folder.resolve(FILE);
    if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)
        || !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        || Files.size(file) > MOST_BYTES) {
      return Optional.empty();
    }
    return Optional.of(new String(Files.readAllBytes(file), StandardCharsets.UTF_8));
  }

  private static Optional<Manifest> parse(String text) {
    List<String> lines = text.lines().toList();
    Optional<ResultFolder.Kind> kind =
        Stream.of(ResultFolder.Kind.values())
            .filter(k -> text.startsWith(FIRST_WORDS + k.word() + LAST_WORDS + "\n"))
            .findFirst();
    if (kind.isEmpty()) {
      return Optional.empty();
    }
    SortedMap<String, String> listed = new TreeMap<>();
    for (String line : lines.subList(1, lines.size())) {
      Matcher form = LINE.matcher(line);
      if (!form.matches() || !plain(form.group(2))) {
        return Optional.empty();
      }
      listed.put(form.group(2), form.group(1));
    }
    Manifest found = new Manifest(kind.get(), listed);
    return found.text().equals(text) ? Optional.of(found) : Optional.empty();
  }

  /** Whether a name stays below the folder. */
  private static boolean plain(String name) {
    return Stream.of(name.split("/", -1)).noneMatch(p -> p.isEmpty() || p.matches("\\.{1,2}"))
        && !name.equals(FILE);
  }

  /**
   * The first thing in a folder, by name, that is not as this manifest lists it. A listed file that
   * is gone is nothing anybody could lose.
   *
   * @return what is amiss, one clause; nothing when all is as it was written
   */
  Optional<String> firstAmiss(Path folder, int threads) throws IOException {
    Set<String> folders = folders();
    TreeMap<String, String> amiss = new TreeMap<>();
    List<Path> listed = new ArrayList<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path path : (Iterable<Path>) all.skip(1)::iterator) {
        String name = name(folder, path);
        if (Files.isSymbolicLink(path)) {
          amiss.put(name, "is a link, and twinrig makes none");
        } else if (Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS)) {
          if (!folders.contains(name)) {
            amiss.put(name, "is a folder that twinrig did not make");
          }
        } else if (!Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS)) {
          amiss.put(name, "is neither a file nor a folder");
        } else if (sha256.containsKey(name)) {
          listed.add(path);
        } else if (!name.equals(FILE)) {
          amiss.put(name, "was not written by twinrig");
        }
      }
    }
    hashes(folder, listed, threads).entrySet().stream()
        .filter(file -> !sha256.entrySet().contains(file))
        .forEach(file -> amiss.put(file.getKey(), "was changed after twinrig had written it"));
    return Optional.ofNullable(amiss.firstEntry())
        .map(first -> "`" + first.getKey() + "` in it " + first.getValue());
  }

  /** The listed files of a folder that still are what was written, by name. */
  List<Path> untouched(Path folder, int threads) throws IOException {
    List<Path> there =
        sha256.keySet().stream()
            .map(folder::resolve)
            .filter(file -> reached(folder, file))
            .filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
            .toList();
    return hashes(folder, there, threads).entrySet().stream()
        .filter(sha256.entrySet()::contains)
        .map(file -> folder.resolve(file.getKey()))
        .toList();
  }

  /** Whether no folder on the way to a file is a link that leads elsewhere. */
  private static boolean reached(Path folder, Path file) {
    Path above = file.getParent();
    while (above != null && !above.equals(folder)) {
      if (!Files.isDirectory(above, LinkOption.NOFOLLOW_LINKS)) {
        return false;
      }
      above = above.getParent();
    }
    return true;
  }

  /** Whether every listed file is there as it was written. */
  boolean isWhole(Path folder, int threads) throws IOException {
    return untouched(folder, threads).size() == sha256.size();
  }

  private Set<String> folders() {
    Set<String> folders = new TreeSet<>();
    for (String file : sha256.keySet()) {
      for (int slash = file.indexOf('/'); slash > 0; slash = file.indexOf('/', slash + 1)) {
        folders.add(file.substring(0, slash));
      }
    }
    return folders;
  }

  /** Those of them that are there, the innermost first. */
  List<Path> foldersBelow(Path folder) {
    return folders().stream()
        .sorted(Comparator.reverseOrder())
        .map(folder::resolve)
        .filter(f -> reached(folder, f) && Files.isDirectory(f, LinkOption.NOFOLLOW_LINKS))
        .toList();
  }
}
