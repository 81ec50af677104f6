package org.twinrig.translation;

import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedSet;
import java.util.TreeSet;
import org.twinrig.capture.Unit;
import org.twinrig.intake.LabRow;
import org.twinrig.intake.LabTable;
import org.twinrig.problem.Findings;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Smoothing;

/** Reads catalogue.csv: the old graphs, one row each. */
public final class CatalogueReader {
  private static final LabTable.Columns COLUMNS =
      new LabTable.Columns(
          "catalogue",
          List.of("graph", "unit", "kind", "file"),
          List.of(
              "state",
              "seatings",
              "sides",
              "averaging",
              "form",
              "reference",
              "reference_smoothing",
              "smoothing",
              "level",
              "drive",
              "pads",
              "confirmed"));

  private static final String RAW = "raw";
  private static final String COMPENSATED = "compensated";
  private static final String RELATIVE = CatalogueEntry.Level.RELATIVE.word();
  private static final String ABSOLUTE = CatalogueEntry.Level.ABSOLUTE.word();

  private final Map<String, Integer> lineOfGraph = new HashMap<>();

  private CatalogueReader() {}

  /**
   * What a catalogue holds.
   *
   * @param rows how many rows the table has, refused ones included
   * @param entries the rows that could be read
   */
  public record Catalogue(String source, int rows, List<CatalogueEntry> entries) {
    public Catalogue {
      entries = List.copyOf(entries);
    }

    /** The same catalogue with other entries. */
    public Catalogue with(List<CatalogueEntry> entriesThen) {
      return new Catalogue(source, rows, entriesThen);
    }

    /** What its graphs are smoothed by: each smoothing once, by its fraction and domain. */
    public SortedSet<Smoothing> smoothings() {
      SortedSet<Smoothing> all =
          new TreeSet<>(
              Comparator.comparingInt(Smoothing::fraction).thenComparing(Smoothing::domain));
      entries.forEach(e -> all.add(e.statedSmoothing()));
      return all;
    }
  }

  /**
   * Reads a catalogue.
   *
   * @return its rows; one that cannot be read is refused and the rest goes on
   * @throws UnusableInput when the table as a whole cannot be read
   */
  public static Findings<Catalogue> read(Path file, String source) throws UnusableInput {
    LabTable table = LabTable.of(file, source, COLUMNS);
    CatalogueReader reader = new CatalogueReader();
    Findings<List<CatalogueEntry>> rows = table.read(reader::entry);
    return new Findings<>(
        new Catalogue(table.source(), table.size(), rows.value()), rows.problems());
  }

  private Optional<CatalogueEntry> entry(LabRow row) {
    String graph = row.text("graph");
    String unit = row.text("unit");
    String kind = kind(row);
    String file = row.text("file");
    String form = row.word("form", List.of(RAW, COMPENSATED), RAW);
    CatalogueEntry.Averaged averaged =
        new CatalogueEntry.Averaged(
            countIfAny(row, "seatings", 10_000), countIfAny(row, "sides", 2), averaging(row));
    Optional<CatalogueEntry.Subtracted> subtracted = subtracted(row, form);
    Optional<Smoothing> smoothing = smoothing(row, "smoothing");
    Optional<String> drive = drive(row, form);
    String confirmed = row.confirmed();
    Integer before = lineOfGraph.putIfAbsent(graph, row.line());
    if (before != null) {
      row.refuse(
          "graph `" + graph + "` stands in line " + before + " already",
          "give every graph a name of its own");
    }
    return row.ifSound(
        () ->
            new CatalogueEntry(
                graph,
                unit,
                kind,
                file,
                averaged,
                subtracted,
                smoothing,
                drive,
                row.cell("pads").strip(),
                confirmed,
                row.line()));
  }

  /** The kind of a unit in its state, which is a kind apart. */
  private static String kind(LabRow row) {
    String kind = row.text("kind");
    String state = row.word("state", Unit.STATES, Unit.STATES.get(0));
    String inState = Unit.kindInState(kind, state);
    if (kind.equals(Translation.UNKNOWN_KIND)
        && !Unit.passive(inState)
        && !Unit.adaptive(inState)) {
      row.refuse(
          "`state` is `" + state + "`, and `kind` is `" + kind + "`",
          "name the kind, because a graph of unknown kind is held against passive units only");
    }
    return inState;
  }

  private static CatalogueEntry.Averaging averaging(LabRow row) {
    List<CatalogueEntry.Averaging> all = List.of(CatalogueEntry.Averaging.values());
    List<String> words = all.stream().map(CatalogueEntry.Averaging::word).toList();
    return all.get(Math.max(0, words.indexOf(row.word("averaging", words, words.get(0)))));
  }

  private static Optional<CatalogueEntry.Subtracted> subtracted(LabRow row, String form) {
    Optional<String> file =
        row.has("reference") ? Optional.of(row.text("reference")) : Optional.empty();
    Optional<Smoothing> smoothing = smoothing(row, "reference_smoothing");
    if (form.equals(COMPENSATED)) {
      return Optional.of(new CatalogueEntry.Subtracted(file, smoothing));
    }
    // Of a form that is no known word, nothing more can be said.
    if (form.equals(RAW) && file.isPresent()) {
      row.refuse(
          "a raw graph names a `reference`",
          "write `compensated` under `form` when the curve was subtracted, or leave `reference`"
              + " empty");
    }
    return Optional.empty();
  }

  /** What an absolute graph was driven with; nothing for a relative one. */
  private static Optional<String> drive(LabRow row, String form) {
    List<String> words = List.of(RELATIVE, ABSOLUTE);
    if (!row.word("level", words, RELATIVE).equals(ABSOLUTE)) {
      return Optional.empty();
    }
    if (form.equals(COMPENSATED)) {
      row.refuse(
          "a compensated graph is called `absolute`",
          "give the raw graph, or write `relative` under `level`");
      return Optional.empty();
    }
    if (!row.has("drive")) {
      row.refuse(
          "an absolute graph names no `drive`",
          "write what the unit was driven with, such as `1 V` or `1 mW`, or `relative` under"
              + " `level`");
      return Optional.empty();
    }
    return Optional.of(row.text("drive"));
  }

  private static OptionalInt countIfAny(LabRow row, String column, int most) {
    return row.has(column) ? OptionalInt.of(row.count(column, 1, most)) : OptionalInt.empty();
  }

  private static Optional<Smoothing> smoothing(LabRow row, String column) {
    if (!row.has(column)) {
      return Optional.empty();
    }
    Optional<Smoothing> read = Smoothing.of(row.cell(column));
    if (read.isEmpty()) {
      row.refuse("`" + column + "` is `" + row.cell(column) + "`", Smoothing.FORM);
    }
    return read;
  }
}
