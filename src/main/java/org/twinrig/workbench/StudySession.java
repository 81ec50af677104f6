package org.twinrig.workbench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.doubt.Answers;
import org.twinrig.doubt.Doubt;
import org.twinrig.intake.MendedTable;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.StudyRun;
import org.twinrig.screening.Verdict;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;
import org.twinrig.study.StudyText;

/**
 * The lab session: one study, the changes made to it since the workbench was opened, and the way
 * back.
 *
 * <p>Changes come one after the other. Each is written to the lab's own file before anything else
 * happens, then the study is estimated anew and a new {@link Snapshot} put on top. Reading a
 * snapshot never waits for a change.
 */
public final class StudySession {
  private final Path place;
  private final List<Path> dataRoots;
  private final int threads;
  private final Deque<Undo> undos = new ArrayDeque<>();
  private final List<Entry> entries = new CopyOnWriteArrayList<>();
  private Curves curves;
  private final LabFiles files = new LabFiles();
  private volatile Snapshot snapshot;

  /** A way back: the bytes a file had, and those the change gave it. */
  @SuppressWarnings("ArrayRecordComponent")
  private record Undo(int file, byte[] before, byte[] after, String what) {}

  /** One change: the state a change led to, and what was done. */
  public record Entry(long revision, String what) {}

  private static final int MOST_ENTRIES = 1000;
  private static final int MOST_UNDOS = 200;

  /**
   * Opens a study.
   *
   * @param seen takes what the lab declares, before the longer work on it begins
   * @throws UnusableInput when it cannot be read
   */
  StudySession(Path place, List<Path> dataRoots, int threads, Consumer<Study> seen)
      throws UnusableInput, IOException {
    this.place = place;
    this.dataRoots = List.copyOf(dataRoots);
    this.threads = threads;
    begin("The workbench was opened.", seen);
  }

  Snapshot snapshot() {
    return Objects.requireNonNull(snapshot, "an open session");
  }

  /** What was done so far, oldest first. */
  List<Entry> entries() {
    return List.copyOf(entries);
  }

  /** What someone else changed in the study's files since they were read, file by file. */
  List<LabFile.Change> changedOnDisk() throws IOException {
    return files.changed();
  }

  /**
   * Leaves a capture out, or with an empty reason takes it back.
   *
   * @param unit whose capture the page showed in the line
   */
  synchronized void exclude(long revision, int line, String unit, String reason)
      throws RefusedException, UnusableInput, IOException {
    refuseStale(revision);
    CaptureEntry c = captureIn(line, unit);
    LabFile table = files.get(LabFiles.CAPTURES);
    byte[] after = new MendedTable(table.bytes(), table.name()).with(line, "exclude", reason);
    String done = reason.isEmpty() ? "taken back" : "left out: " + reason;
    change(LabFiles.CAPTURES, after, told(c, done));
  }

  /**
   * Answers what screening doubts about a capture, or with an empty reason opens it again.
   *
   * @param unit whose capture the page showed in the line
   */
  synchronized void confirm(long revision, int line, String unit, String reason)
      throws RefusedException, UnusableInput, IOException {
    refuseStale(revision);
    CaptureEntry c = captureIn(line, unit);
    String cell = c.confirmed();
    for (Verdict verdict : new ScreenedCaptures(snapshot()).of(c)) {
      cell = Answers.changed(cell, verdict.finding().word(), reason);
    }
    String done = reason.isEmpty() ? "put in doubt again" : "confirmed: " + reason;
    confirm(LabFiles.CAPTURES, new TreeMap<>(Map.of(line, cell)), told(c, done));
  }

  /** Answers doubts in the rows they are about, or with an empty reason opens them again. */
  synchronized void answer(long revision, List<Doubt> doubts, String reason)
      throws RefusedException, UnusableInput, IOException {
    refuseStale(revision);
    SortedMap<Integer, String> cells = new TreeMap<>();
    Answers.Table table = Answers.Table.UNITS;
    for (Doubt doubt : doubts) {
      List<Answers.Row> rows = Answers.rows(snapshot().study(), doubt);
      if (rows.isEmpty()) {
        throw Request.unusable(
            "`" + doubt.doubt() + "` has no row in a table",
            "mend what is wrong: it cannot be answered");
      }
      for (Answers.Row row : reason.isEmpty() ? rows : rows.subList(0, 1)) {
        table = row.table();
        String cell = cells.getOrDefault(row.line(), row.confirmed());
        cells.put(row.line(), Answers.changed(cell, doubt.doubt(), reason));
      }
    }
    int file =
        switch (table) {
          case UNITS -> LabFiles.UNITS;
          case CAPTURES -> LabFiles.CAPTURES;
          case SESSIONS -> LabFiles.SESSIONS;
        };
    String about = doubts.get(0).doubt() + " (" + Cause.names(doubts) + ")";
    confirm(
        file,
        cells,
        reason.isEmpty()
            ? "Opened again: " + about + "."
            : "Answered: " + about + ", because " + reason + ".");
  }

  /** Writes cells of the column {@code confirmed}, by their lines. */
  private void confirm(int file, SortedMap<Integer, String> cells, String what)
      throws RefusedException, UnusableInput, IOException {
    LabFile table = files.get(file);
    change(file, MendedTable.with(table.bytes(), table.name(), "confirmed", cells), what);
  }

  private static String told(CaptureEntry c, String done) {
    return "%s on %s, seating %s (%s), was %s."
        .formatted(c.unit(), c.fixture(), c.seating(), c.side(), done);
  }

  private CaptureEntry captureIn(int line, String unit) throws UnusableInput {
    LabFile table = files.get(LabFiles.CAPTURES);
    Optional<CaptureEntry> found =
        snapshot().study().captures().stream().filter(c -> c.line() == line).findFirst();
    if (found.isEmpty() || !found.get().unit().equals(unit)) {
      String other = "a capture of `%s` stands in this line, none of `%s`";
      throw UnusableInput.fatal(
          table.name(),
          line,
          found
              .map(c -> other.formatted(c.unit(), unit))
              .orElse("no capture of the study stands in this line"),
          (found.isEmpty() ? "go back to the unit" : "open the unit's page again")
              + " and choose one of its captures");
    }
    return found.get();
  }

  /** The snapshot that a page was made of. */
  Snapshot at(long revision) throws RefusedException {
    refuseStale(revision);
    return snapshot();
  }

  /** Writes a changed study.yaml, when the reader can read it. */
  synchronized void settle(long revision, StudyText text, String what)
      throws RefusedException, UnusableInput, IOException {
    refuseStale(revision);
    byte[] after = text.text().getBytes(StandardCharsets.UTF_8);
    LabFile yaml = files.get(LabFiles.YAML);
    if (!yaml.holds(after)) {
      tryOut(yaml, after);
      change(LabFiles.YAML, after, what);
    }
  }

  /**
   * Reads a changed study.yaml before it takes the old one's place: a copy that lies where the file
   * does, so that every name in it leads where it will.
   */
  private void tryOut(LabFile yaml, byte[] bytes) throws UnusableInput, IOException {
    Path copy = yaml.written(bytes);
    String aside = Objects.requireNonNull(copy.getFileName(), "a file").toString();
    try {
      StudyReader.read(copy, dataRoots);
    } catch (UnusableInput e) {
      throw new UnusableInput(
          e.problems().stream()
              .map(
                  p ->
                      p.source().equals(aside)
                          ? new Problem(p.kind(), yaml.name(), p.line(), p.what(), p.remedy())
                          : p)
              .toList());
    } finally {
      Files.deleteIfExists(copy);
    }
  }

  StudyText yaml() {
    return new StudyText(files.get(LabFiles.YAML).text());
  }

  String yamlName() {
    return files.get(LabFiles.YAML).name();
  }

  synchronized void undo(long revision) throws RefusedException, UnusableInput, IOException {
    refuseStale(revision);
    Undo undo = undos.peek();
    if (undo == null) {
      return;
    }
    // The file may have been out of the study's sight meanwhile.
    LabFile now = files.get(undo.file());
    if (!now.holds(undo.after())) {
      throw new LabFile.Change(
              now.name(), List.of("it is not what the change to be undone had left"))
          .refused();
    }
    Optional<String> next = undos.stream().skip(1).findFirst().map(Undo::what);
    write(undo.file(), undo.before(), "Undone: " + undo.what(), next);
    undos.pop();
  }

  /** Reads everything anew from the disk; what was done before cannot be undone after that. */
  synchronized void reload() throws UnusableInput, IOException {
    begin("The study was read anew from its files.", study -> {});
  }

  private void refuseStale(long revision) throws RefusedException {
    if (revision != snapshot().revision()) {
      throw new RefusedException(
          RefusedException.Why.STALE,
          "",
          entries.stream().filter(e -> e.revision() > revision).map(Entry::what).toList());
    }
  }

  private void change(int file, byte[] after, String what)
      throws RefusedException, UnusableInput, IOException {
    byte[] before = files.get(file).bytes();
    write(file, after, what, Optional.of(what));
    undos.push(new Undo(file, before, after, what));
    if (undos.size() > MOST_UNDOS) {
      undos.removeLast();
    }
  }

  /** Writes a file and puts the new snapshot on top; where that fails the file is as it was. */
  private void write(int file, byte[] bytes, String what, Optional<String> undo)
      throws RefusedException, UnusableInput, IOException {
    byte[] before = files.get(file).bytes();
    files.write(file, bytes);
    try {
      Findings<Study> read = StudyReader.read(place, dataRoots);
      files.follow(read.value());
      if (!curves.serve(read.value())) {
        curves = Curves.read(read.value(), threads);
      }
      put(what, undo, read);
    } catch (UnusableInput e) {
      files.write(file, before);
      files.follow(snapshot().study());
      throw e;
    }
  }

  private void begin(String what, Consumer<Study> seen) throws UnusableInput, IOException {
    files.see(StudyReader.read(place, dataRoots).value());
    // Read after the files were looked at: whatever changes in between is noticed as a change.
    Findings<Study> read = StudyReader.read(place, dataRoots);
    seen.accept(read.value());
    curves = Curves.read(read.value(), threads);
    undos.clear();
    put(what, Optional.empty(), read);
  }

  private void put(String what, Optional<String> undo, Findings<Study> read) throws UnusableInput {
    Study study = read.value();
    Optional<StudyOutcome> before = snapshot == null ? Optional.empty() : snapshot.outcome();
    StudyRun run = StudyRun.of(read, curves.of(study), before, threads);
    long revision = snapshot == null ? 1 : snapshot.revision() + 1;
    Snapshot next =
        new Snapshot(
            revision, what, study, run.fingerprint(), run.outcome(), before, undo, run.problems());
    entries.add(new Entry(revision, what));
    if (entries.size() > MOST_ENTRIES) {
      entries.remove(0);
    }
    snapshot = next;
  }
}
