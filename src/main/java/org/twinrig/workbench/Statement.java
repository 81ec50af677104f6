package org.twinrig.workbench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.CatalogueReader;

/**
 * What a sender says of the files of a upload, in the words of catalogue.csv: by a table that came
 * along, or by a form. Either way the one reader of catalogues reads it.
 */
public record Statement(Upload upload) {
  static final List<String> ASKED =
      List.of(
          "kind",
          "seatings",
          "sides",
          "averaging",
          "form",
          "reference",
          "reference_smoothing",
          "smoothing");

  /** In a form: the reference the study itself names for its old fixture. */
  public static final String OWN_REFERENCE = ":own";

  Findings<CatalogueReader.Catalogue> byTable() throws UnusableInput, IOException {
    Path table = upload.folder().resolve(Upload.STATEMENT);
    return checked(CatalogueReader.read(table, Upload.STATEMENT));
  }

  /**
   * By a form.
   *
   * @param all what holds for every file, by column
   * @param own what a file says otherwise, by column; one map per file
   */
  Findings<CatalogueReader.Catalogue> byForm(Map<String, String> all, List<Map<String, String>> own)
      throws UnusableInput, IOException {
    List<Map<String, String>> said = new ArrayList<>();
    own.forEach(o -> said.add(merged(all, o)));
    List<Integer> graphs = graphs(said);
    Path table = upload.folder().resolve(Upload.STATEMENT);
    Files.writeString(table, table(graphs, said), StandardCharsets.UTF_8);
    Findings<CatalogueReader.Catalogue> read = CatalogueReader.read(table, Upload.STATEMENT);
    return new Findings<>(read.value(), byFile(read.problems(), graphs));
  }

  /** What holds for a file: its own words, and those for all where it has none. */
  private static Map<String, String> merged(Map<String, String> all, Map<String, String> own) {
    Map<String, String> merged = new LinkedHashMap<>();
    for (String column : ASKED) {
      String word = own.getOrDefault(column, "");
      merged.put(column, word.isEmpty() ? all.getOrDefault(column, "") : word);
    }
    // Nothing was subtracted from this one, whatever was from the others.
    if (own.getOrDefault("form", "").equals("raw")) {
      merged.put("reference", own.getOrDefault("reference", ""));
      merged.put("reference_smoothing", own.getOrDefault("reference_smoothing", ""));
    }
    if (merged.get("reference").equals(OWN_REFERENCE)) {
      merged.put("reference", "");
    }
    return merged;
  }

  /** All files but those another one names as its reference. */
  private List<Integer> graphs(List<Map<String, String>> said) {
    Set<Integer> references = new LinkedHashSet<>();
    for (int k = 0; k < said.size(); k++) {
      int file = k;
      String form = said.get(k).get("form");
      Optional.of(said.get(k).get("reference"))
          .filter(r -> !r.isEmpty() && form.equals("compensated"))
          .flatMap(upload::find)
          .filter(r -> r != file || said.size() > 1)
          .ifPresent(references::add);
    }
    return IntStream.range(0, said.size()).filter(k -> !references.contains(k)).boxed().toList();
  }

  private String table(List<Integer> graphs, List<Map<String, String>> said) {
    StringBuilder table = new StringBuilder("graph,unit,file," + String.join(",", ASKED) + "\n");
    for (int k : graphs) {
      String name = cell(upload.names().get(k));
      List<String> cells = new ArrayList<>(List.of(name, name, name));
      ASKED.forEach(column -> cells.add(cell(said.get(k).get(column))));
      table.append(String.join(",", cells)).append('\n');
    }
    return table.toString();
  }

  private static String cell(String text) {
    return "\"" + text.replaceAll("\\p{Cntrl}", " ").replace("\"", "\"\"") + "\"";
  }

  /** A form has no lines: a problem belongs to a file, and one that all share is told once. */
  private List<Problem> byFile(List<Problem> problems, List<Integer> graphs) {
    Map<Problem, List<String>> files = new LinkedHashMap<>();
    for (Problem p : problems) {
      String file =
          p.line() >= 2 && p.line() - 2 < graphs.size()
              ? upload.names().get(graphs.get(p.line() - 2))
              : p.source();
      Problem what = new Problem(p.kind(), "all files", 0, p.what(), p.remedy());
      files.computeIfAbsent(what, w -> new ArrayList<>()).add(file);
    }
    List<Problem> told = new ArrayList<>();
    files.forEach(
        (p, names) -> {
          boolean all = names.size() > 1 && names.size() == graphs.size();
          String place = all ? p.source() : String.join(", ", names);
          told.add(new Problem(p.kind(), place, 0, p.what(), p.remedy()));
        });
    return told;
  }

  /** A table may name files that were not sent, and files may come that it does not name. */
  private Findings<CatalogueReader.Catalogue> checked(Findings<CatalogueReader.Catalogue> read) {
    List<Problem> problems = new ArrayList<>(read.problems());
    List<CatalogueEntry> there = new ArrayList<>();
    Set<Integer> named = new LinkedHashSet<>();
    for (CatalogueEntry row : read.value().entries()) {
      List<String> files = new ArrayList<>(List.of(row.file()));
      row.subtracted().flatMap(CatalogueEntry.Subtracted::file).ifPresent(files::add);
      files.forEach(file -> upload.find(file).ifPresent(named::add));
      List<String> missing = files.stream().filter(f -> upload.find(f).isEmpty()).toList();
      for (String file : missing) {
        problems.add(
            Problem.refused(
                Upload.STATEMENT,
                row.line(),
                "no file, or more than one, was sent for `" + file + "`",
                "send it along with " + Upload.STATEMENT + ", under a name of its own"));
      }
      if (missing.isEmpty()) {
        there.add(row);
      }
    }
    String unnamed = "was sent, but no row of " + Upload.STATEMENT + " names it";
    for (int k = 0; k < upload.files().size(); k++) {
      if (!named.contains(k)) {
        problems.add(Problem.note(upload.names().get(k), 0, unnamed));
      }
    }
    return new Findings<>(read.value().with(there), problems);
  }
}
