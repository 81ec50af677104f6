package org.twinrig.workbench;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueReader;

/**
 * Files that were sent together. They lie in a folder of their own and bear numbers there, whatever
 * a sender calls them: a name is only ever shown.
 *
 * @param names what the lab calls each, without folders; one that comes twice is numbered
 * @param files as they were sent, in the same order
 * @param stated whether a catalogue.csv came along, which is none of the files
 */
public record Upload(
    Path folder, List<String> names, List<Request.SentFile> files, boolean stated) {
  /** What a table that states what the files are must be called. */
  static final String STATEMENT = "catalogue.csv";

  private static final Pattern ON_DISK = Pattern.compile("twinrig-sent-([0-9]{5})");

  /**
   * Moves files that were sent into a folder of their own.
   *
   * @throws UnusableInput when there is no graph among them
   */
  static Upload of(List<Request.SentFile> sent, Incoming incoming)
      throws UnusableInput, IOException {
    List<Request.SentFile> files = new ArrayList<>();
    List<String> names = new ArrayList<>();
    Optional<Request.SentFile> statement = Optional.empty();
    for (Request.SentFile each : sent) {
      String base = base(each.name());
      if (statement.isEmpty() && base.toLowerCase(Locale.ROOT).equals(STATEMENT)) {
        statement = Optional.of(each);
        continue;
      }
      String name = base;
      for (int k = 2; names.contains(name); k++) {
        name = base + " (" + k + ")";
      }
      names.add(name);
      files.add(each);
    }
    if (files.isEmpty()) {
      throw Request.unusable(
          statement.isEmpty() ? "no file was chosen" : "only " + STATEMENT + " was chosen",
          "choose one or more old graphs");
    }
    Path folder = incoming.folder();
    for (int k = 0; k < files.size(); k++) {
      Files.move(files.get(k).file(), folder.resolve(onDisk(k)));
    }
    if (statement.isPresent()) {
      Files.move(statement.get().file(), folder.resolve(STATEMENT));
    }
    return new Upload(folder, names, files, statement.isPresent());
  }

  /** The name alone; browsers write a quotation mark in a form as {@code %22} (HTML, 4.10.21.8). */
  private static String base(String name) {
    String plain =
        name.replace("%22", "\"").replaceAll(".*[/\\\\]", "").replaceAll("\\p{Cntrl}", "?").strip();
    return plain.isEmpty() ? "graph" : plain;
  }

  long bytes() {
    return files.stream().mapToLong(Request.SentFile::bytes).sum();
  }

  /** Whether exactly one file came under a name, whatever folder a table gives it. */
  Optional<Integer> find(String name) {
    List<Integer> found = new ArrayList<>();
    for (int k = 0; k < files.size(); k++) {
      if (names.get(k).equals(name)) {
        return Optional.of(k);
      }
      if (base(files.get(k).name()).equals(base(name))) {
        found.add(k);
      }
    }
    return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
  }

  void delete() throws IOException {
    delete(folder);
  }

  /** Deletes a folder that holds nothing but files. */
  static void delete(Path folder) throws IOException {
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
      for (Path file : files) {
        Files.delete(file);
      }
    }
    Files.delete(folder);
  }

  static String onDisk(int file) {
    return String.format(Locale.ROOT, "twinrig-sent-%05d", file);
  }

  /** A row of a catalogue whose graph and reference are looked for where they were spread. */
  CatalogueEntry placed(CatalogueEntry row) {
    return new CatalogueEntry(
        row.graph(),
        row.unit(),
        row.kind(),
        placed(row.file()),
        row.averaged(),
        row.subtracted()
            .map(s -> new CatalogueEntry.Subtracted(s.file().map(this::placed), s.smoothing())),
        row.smoothing(),
        row.drive(),
        row.pads(),
        row.confirmed(),
        row.line());
  }

  private String placed(String file) {
    return find(file).map(Upload::onDisk).orElse(file);
  }

  /** A problem that names the files as the lab does; where it sent no table, there are no rows. */
  Problem named(Problem p, CatalogueReader.Catalogue rows) {
    Optional<String> graph =
        rows.entries().stream()
            .filter(e -> !stated && p.source().equals(rows.source()))
            .filter(e -> e.line() == p.line())
            .map(CatalogueEntry::file)
            .findFirst();
    String source = named(graph.orElse(p.source()));
    int line = graph.isPresent() ? 0 : p.line();
    return new Problem(p.kind(), source, line, named(p.what()), named(p.remedy()));
  }

  private String named(String text) {
    return ON_DISK.matcher(text).replaceAll(found -> Matcher.quoteReplacement(name(found)));
  }

  private String name(MatchResult onDisk) {
    int file = Integer.parseInt(onDisk.group(1));
    return file < names.size() ? names.get(file) : onDisk.group();
  }
}
