package org.twinrig.study;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
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

/** The table of captures, every name in it checked against what it refers to. */
final class CapturesTable {
  private static final int MOST_SEATINGS = 9999;

  private static final Set<String> NO = Set.of("no", "n", "false", "0", "-", "none");

  /** What may be captured only once. */
  private record Slot(String unit, String fixture, Side side, int seating) {}

  private final Roster<Unit> units;
  private final Roster<String> fixtures;
  private final Optional<Roster<Session>> sessions;
  private final DataRoot dataRoot;
  private final Path folder;

  /** How each fixture is found as a word in the name of a file, in any case. */
  private final Map<String, Pattern> fixtureWords;

  private final Set<String> named = new HashSet<>();
  private final Map<Slot, Integer> lines = new HashMap<>();

  /** Of what the rows refer to, and of the table's folder, without links in its path. */
  CapturesTable(
      Roster<Unit> units,
      Roster<String> fixtures,
      Optional<Roster<Session>> sessions,
      DataRoot dataRoot,
      Path folder) {
    this.units = units;
    this.fixtures = fixtures;
    this.sessions = sessions;
    this.dataRoot = dataRoot;
    this.folder = folder;
    fixtureWords =
        fixtures.sound().keySet().stream()
            .collect(Collectors.toMap(name -> name, CapturesTable::word));
  }

  Findings<List<CaptureEntry>> read(LabTable table) {
    table.cells("file").forEach(file -> named.add(file.strip()));
    return table.read(this::entry);
  }

  private Optional<CaptureEntry> entry(LabRow row) {
    String unit = row.text("unit");
    String fixture = row.text("fixture");
    units.find(row, "unit");
    fixtures.find(row, "fixture");
    String side = row.word("side", List.of("L", "R", "M"), "");
    int seating = row.count("seating", 1, MOST_SEATINGS);
    String file = row.text("file").strip();
    checkFile(row, file);
    checkSession(row, fixture);
    noteRefusal(row);
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
                    row.cell("exclude").strip(),
                    row.cell("note"),
                    row.line()))
        .filter(entry -> isFirst(row, entry));
  }

  private void checkFile(LabRow row, String file) {
    if (!file.isEmpty()
        && dataRoot.file(folder, file, named) instanceof DataRoot.Place.Refused refused) {
      row.refuse(refused.what(), refused.remedy());
    }
  }

  private void checkSession(LabRow row, String fixture) {
    if (!row.has("session")) {
      return;
    }
    if (sessions.isEmpty()) {
      row.refuse(
          "`session` is filled in, but the study has no table of sessions",
          "add `sessions: sessions.csv` to study.yaml, or leave the cell empty");
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

  /** The column holds a reason; a word that says no would leave the capture out all the same. */
  private static void noteRefusal(LabRow row) {
    String written = row.cell("exclude").strip();
    if (NO.contains(written.toLowerCase(Locale.ROOT))) {
      row.note(
          "`exclude` is `"
              + written
              + "`, and whatever stands there leaves the capture out; empty the cell to keep it");
    }
  }

  /** A row moved to the other fixture by a slip of the pen would go into the wrong mean. */
  private void noteOtherFixture(LabRow row, String fixture, String file) {
    Pattern own = fixtureWords.get(fixture);
    if (own == null || own.matcher(file).find()) {
      return;
    }
    fixtures.sound().keySet().stream()
        .filter(other -> fixtureWords.get(other).matcher(file).find())
        .findFirst()
        .ifPresent(
            other ->
                row.note(
                    String.format(
                        "`fixture` is `%s`, but the name `%s` says `%s`; the row is used as it"
                            + " stands: correct it if it is wrong",
                        fixture, file, other)));
  }

  private static Pattern word(String name) {
    return Pattern.compile(
        "(?<![\\p{L}\\p{N}])" + Pattern.quote(name) + "(?![\\p{L}\\p{N}])",
        Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
  }

  private boolean isFirst(LabRow row, CaptureEntry entry) {
    Slot slot = new Slot(entry.unit(), entry.fixture(), entry.side(), entry.seating());
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
