package org.twinrig.study;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Session;
import org.twinrig.capture.Side;
import org.twinrig.capture.Unit;
import org.twinrig.intake.LabRow;
import org.twinrig.intake.LabTable;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;

/**
 * The table of captures, every name in it checked against what it refers to.
 *
 * @param sessions nothing when the study has no table of them
 * @param folder the table's, without links in its path
 */
record CapturesTable(
    Roster<Unit> units,
    Roster<String> fixtures,
    Optional<Roster<Session>> sessions,
    DataRoot dataRoot,
    Path folder) {

  private static final int MOST_SEATINGS = 9999;

  /** What may be captured only once. */
  private record Slot(String unit, String fixture, Side side, int seating, String session) {}

  Findings<List<CaptureEntry>> read(LabTable table) {
    Set<String> files = table.cells("file").stream().map(String::strip).collect(Collectors.toSet());
    Map<Slot, Integer> lines = new HashMap<>();
    return countedOn(
        table.read(row -> entry(row, files).filter(entry -> isFirst(row, entry, lines))),
        table.source());
  }

  private Optional<CaptureEntry> entry(LabRow row, Set<String> files) {
    String unit = row.text("unit");
    String fixture = row.text("fixture");
    units.find(row, "unit");
    fixtures.find(row, "fixture");
    String side = row.word("side", List.of("L", "R", "M"), "");
    int seating = row.count("seating", 1, MOST_SEATINGS);
    String file = row.text("file").strip();
    checkFile(row, file, files);
    checkSession(row, fixture);
    String exclude = row.reason("exclude", "leaves the capture out; empty the cell to keep it");
    String confirmed = row.confirmed();
    noteOtherFixture(row, fixture, file);
    return row.ifSound(
        () ->
            new CaptureEntry(
                unit,
                fixture,
                Side.valueOf(side),
                seating,
                file,
                row.has("session") ? row.cell("session") : "",
                exclude,
                row.cell("note"),
                confirmed,
                row.line()));
  }

  private void checkFile(LabRow row, String file, Set<String> files) {
    if (!file.isEmpty()
        && dataRoot.file(folder, file, files) instanceof DataRoot.Place.Refused refused) {
      row.refuse(refused.what(), refused.remedy());
    }
  }

  private void checkSession(LabRow row, String fixture) {
    if (!row.has("session")) {
      return;
    }
    if (sessions.isEmpty()) {
      row.note(
          "`session` is filled in, and the study has no table of sessions: no level is corrected, no"
              + " drift is judged; `sessions: sessions.csv` in study.yaml names one");
      return;
    }
    Optional<Session> session = sessions.get().find(row, "session");
    if (session.isPresent() && !session.get().fixture().equals(fixture)) {
      row.refuse(
          String.format(
              "session `%s` was held on `%s`, not on `%s`",
              session.get().name(), session.get().fixture(), fixture),
          "correct the session or the fixture");
    }
  }

  /** A row moved to the other fixture by a slip of the pen would go into the wrong mean. */
  private void noteOtherFixture(LabRow row, String fixture, String file) {
    Set<String> known = fixtures.sound().keySet();
    if (!known.contains(fixture) || saysWord(file, fixture)) {
      return;
    }
    known.stream()
        .filter(other -> saysWord(file, other))
        .findFirst()
        .ifPresent(
            other ->
                row.note(
                    String.format(
                        "`fixture` is `%s`, but the name `%s` says `%s`; the row is used as it"
                            + " stands: correct it if it is wrong",
                        fixture, file, other)));
  }

  /** Whether the name of a file holds another as a word, in any case. */
  private static boolean saysWord(String file, String name) {
    String word = "(?iu)(?<![\\p{L}\\p{N}])" + Pattern.quote(name) + "(?![\\p{L}\\p{N}])";
    return Pattern.compile(word).matcher(file).find();
  }

  /** A unit on a fixture. */
  private record Seated(String unit, String fixture) {}

  /** A seating as its session numbers it. */
  private record Numbered(String session, int seating) {}

  /**
   * Where every session begins at seating 1, as with a check unit, seatings are counted on from
   * session to session, in the order of the rows. A seating whose sides were captured in different
   * sessions stays one where no session repeats its number.
   */
  private Findings<List<CaptureEntry>> countedOn(Findings<List<CaptureEntry>> read, String source) {
    Map<Seated, List<CaptureEntry>> units =
        read.value().stream()
            .collect(
                Collectors.groupingBy(
                    e -> new Seated(e.unit(), e.fixture()),
                    LinkedHashMap::new,
                    Collectors.toList()));
    Map<CaptureEntry, Integer> numbers = new HashMap<>();
    List<Problem> problems = new ArrayList<>(read.problems());
    units.forEach(
        (seated, captures) ->
            again(captures)
                .ifPresent(
                    first -> {
                      Map<Numbered, Integer> seen = new HashMap<>();
                      for (CaptureEntry c : captures) {
                        Numbered as = new Numbered(c.session(), c.seating());
                        numbers.put(c, seen.computeIfAbsent(as, k -> seen.size() + 1));
                      }
                      problems.add(
                          Problem.note(
                              source,
                              first.line(),
                              "seatings of `%s` on `%s` begin again in session `%s`: they are counted on, this one is %s"
                                  .formatted(
                                      seated.unit,
                                      seated.fixture,
                                      first.session(),
                                      numbers.get(first))));
                    }));
    return new Findings<>(
        read.value().stream()
            .map(e -> numbers.containsKey(e) ? e.asSeating(numbers.get(e)) : e)
            .map(e -> sessions.isPresent() ? e : e.withoutSession())
            .toList(),
        problems);
  }

  /** The first capture whose side and seating another session has already. */
  private static Optional<CaptureEntry> again(List<CaptureEntry> captures) {
    Set<List<Object>> seen = new HashSet<>();
    return captures.stream().filter(c -> !seen.add(List.of(c.side(), c.seating()))).findFirst();
  }

  private static boolean isFirst(LabRow row, CaptureEntry entry, Map<Slot, Integer> lines) {
    Slot slot =
        new Slot(
            entry.unit(),
            entry.fixture(),
            entry.side(),
            entry.seating(),
            row.cell("session").strip());
    Integer earlier = lines.putIfAbsent(slot, row.line());
    if (earlier != null) {
      row.refuse(
          String.format(
              "`%s` on `%s`, side %s, seating %s stands in line %s already",
              slot.unit(), slot.fixture(), slot.side(), slot.seating(), earlier),
          "correct its unit, fixture or side if one is wrong; otherwise give every seating its own"
              + " number");
    }
    return earlier == null;
  }
}
