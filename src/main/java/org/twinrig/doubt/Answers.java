package org.twinrig.doubt;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.screening.Finding;
import org.twinrig.study.Study;

/**
 * What a lab answers to doubts, in the column {@code confirmed} of its tables.
 *
 * <p>A cell holds a reason in words, which answers every doubt about its row; or, so that a doubt
 * found later stays open, reasons by name, joined by semicolons: {@code departs from its kind: worn
 * pads, as sold; kind doubtful: semi-open by design}. Doubts about a study or a catalogue as a
 * whole have no row, and are not answered but mended.
 */
public final class Answers {
  private Answers() {}

  /** What a cell answers to a doubt; empty where it does not. */
  public static String to(String doubt, String cell) {
    List<String> named = new ArrayList<>();
    boolean byName = false;
    for (String part : cell.split(";", -1)) {
      String name = name(part);
      byName |= NAMED.contains(name);
      if (name.equals(doubt)) {
        named.add(part.substring(part.indexOf(':') + 1).strip());
      }
    }
    return byName ? String.join("; ", named) : cell.strip();
  }

  /** A study's doubts with what its tables answer: a pair's in the row of either unit. */
  public static List<Doubt> of(Study study, List<Doubt> doubts) {
    return doubts.stream().map(d -> d.answered(answer(study, d))).toList();
  }

  private static String answer(Study study, Doubt doubt) {
    return rows(study, doubt).stream()
        .map(row -> to(doubt.doubt(), row.confirmed()))
        .filter(reason -> !reason.isEmpty())
        .findFirst()
        .orElse("");
  }

  /** The tables of a study that have the column. */
  public enum Table {
    UNITS,
    CAPTURES,
    SESSIONS
  }

  /** A row in which a doubt can be answered: its line from 1, and what its cell says now. */
  public record Row(Table table, int line, String confirmed) {}

  /**
   * Where a doubt can be answered, of a pair in the row of either unit; none where it has no row.
   */
  public static List<Row> rows(Study study, Doubt doubt) {
    return switch (doubt.subject()) {
      case CAPTURE ->
          study.captures().stream()
              .filter(c -> c.file().equals(doubt.file()))
              .map(Answers::row)
              .toList();
      case UNIT, PAIR ->
          study.units().stream()
              .filter(u -> doubt.isAbout(u.name()))
              .map(u -> new Row(Table.UNITS, u.line(), u.confirmed()))
              .toList();
      case SESSION ->
          study.sessions().stream()
              .filter(s -> s.name().equals(doubt.name()))
              .map(s -> new Row(Table.SESSIONS, s.line(), s.confirmed()))
              .toList();
      case STUDY, GRAPH, CATALOGUE -> List.of();
    };
  }

  /** The row of a capture. */
  public static Row row(CaptureEntry capture) {
    return new Row(Table.CAPTURES, capture.line(), capture.confirmed());
  }

  /** A cell that answers a doubt by name, or where the reason is empty no longer does. */
  public static String changed(String cell, String doubt, String reason) {
    return reason.isEmpty() ? without(cell, doubt) : with(cell, doubt, reason);
  }

  /** A cell that answers a doubt by name, and what it answered besides. */
  public static String with(String cell, String doubt, String reason) {
    String rest = without(cell, doubt);
    return (rest.isEmpty() ? "" : rest + "; ") + doubt + ": " + reason;
  }

  /**
   * A cell that no longer answers a doubt. A reason that is not by name answered every doubt about
   * its row, and goes as a whole.
   */
  public static String without(String cell, String doubt) {
    List<String> parts = Stream.of(cell.split(";", -1)).map(String::strip).toList();
    return parts.stream().noneMatch(part -> NAMED.contains(name(part)))
        ? ""
        : parts.stream()
            .filter(part -> !name(part).equals(doubt))
            .collect(Collectors.joining("; "));
  }

  private static String name(String part) {
    int colon = part.indexOf(':');
    return colon < 0 ? "" : part.substring(0, colon).strip();
  }

  /** The doubts that can be answered, by the words that name them. */
  private static final List<String> NAMED =
      Stream.concat(
              Stream.of(
                  DepartsFromItsKind.DOUBT,
                  SpecimenChanged.DOUBT,
                  UnitsExchanged.DOUBT,
                  OneUnitTwice.DOUBT,
                  FixturesExchanged.DOUBT,
                  KindDoubtful.DOUBT,
                  GraphDoubts.KIND,
                  GraphDoubts.FORM,
                  GraphDoubts.OUTSIDE,
                  GraphDoubts.SMOOTHING,
                  GraphDoubts.NOISE,
                  "already measured",
                  "same as",
                  "tables contradict"),
              Stream.of(Finding.values()).map(Finding::word))
          .toList();
}
