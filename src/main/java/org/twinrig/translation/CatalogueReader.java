package org.twinrig.translation;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.twinrig.intake.LabRow;
import org.twinrig.intake.LabTable;
import org.twinrig.problem.Findings;
import org.twinrig.problem.UnusableInput;

/** Reads catalogue.csv: the old graphs, one row each. */
public final class CatalogueReader {
  private static final LabTable.Columns COLUMNS =
      new LabTable.Columns(
          List.of("graph", "unit", "kind", "file"),
          List.of("seatings", "form", "reference", "smoothing"));

  private static final String RAW = "raw";
  private static final String COMPENSATED = "compensated";

  private final Map<String, Integer> lineOfGraph = new HashMap<>();

  private CatalogueReader() {}

  /**
   * What a catalogue holds.
   *
   * @param rows how many rows the table has, refused ones included
   * @param entries the rows that could be read
   */
  public record Catalogue(int rows, List<CatalogueEntry> entries) {
    /** Copies the entries. */
    public Catalogue {
      entries = List.copyOf(entries);
    }
  }

  /**
   * Reads a catalogue.
   *
   * @param file the table
   * @param source its name in messages
   * @return its rows; one that cannot be read is refused and the rest goes on
   * @throws UnusableInput when the table as a whole cannot be read
   */
  public static Findings<Catalogue> read(Path file, String source) throws UnusableInput {
    LabTable table = LabTable.of(file, source, COLUMNS);
    CatalogueReader reader = new CatalogueReader();
    Findings<List<CatalogueEntry>> rows = table.read(reader::entry);
    return new Findings<>(new Catalogue(table.size(), rows.value()), rows.problems());
  }

  private Optional<CatalogueEntry> entry(LabRow row) {
    String graph = row.text("graph");
    String unit = row.text("unit");
    String kind = row.text("kind");
    String file = row.text("file");
    String form = row.word("form", List.of(RAW, COMPENSATED), RAW);
    OptionalInt seatings =
        row.has("seatings")
            ? OptionalInt.of(row.count("seatings", 1, 10_000))
            : OptionalInt.empty();
    Optional<String> reference =
        row.has("reference") ? Optional.of(row.text("reference")) : Optional.empty();
    if (form.equals(COMPENSATED) && reference.isEmpty()) {
      row.refuse(
          "a compensated graph does not name its `reference`",
          "name the file of the curve that was subtracted, or give the raw graph");
    }
    if (form.equals(RAW) && reference.isPresent()) {
      row.refuse(
          "a raw graph names a `reference`",
          "write `compensated` under `form` when the curve was subtracted, or leave `reference`"
              + " empty");
    }
    Integer before = lineOfGraph.putIfAbsent(graph, row.line());
    if (before != null) {
      row.refuse(
          "graph `" + graph + "` stands in line " + before + " already",
          "give every graph a name of its own");
    }
    return row.ifSound(
        () ->
            new CatalogueEntry(
                graph, unit, kind, file, seatings, reference, row.cell("smoothing"), row.line()));
  }
}
