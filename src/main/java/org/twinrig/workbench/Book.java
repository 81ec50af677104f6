package org.twinrig.workbench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.intake.MendedTable;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.report.StudyRun;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;
import org.twinrig.study.StudyText;
import org.twinrig.workbench.LabFile.ChangedOnDiskException;

/**
 * The lab book: one study, the changes made to it since the workbench was opened, and the way back.
 *
 * <p>Changes come one after the other. Each is written to the lab's own file before anything else
 * happens, then the study is estimated anew and a new {@link Leaf} put on top. Reading a leaf never
 * waits for a change.
 */
final class Book {
  private final Path place;
  private final List<Path> dataRoots;
  private final int threads;
  private final Deque<Undo> undos = new ArrayDeque<>();
  private final List<Entry> entries = new CopyOnWriteArrayList<>();
  private Curves curves;
  private final LabFiles files = new LabFiles();
  private volatile Leaf leaf;

  /** A way back: the bytes a file had, and those the change gave it. */
  @SuppressWarnings("ArrayRecordComponent")
  private record Undo(int file, byte[] before, byte[] after, String what) {}

  /** One line of the book: the state a change led to, and what was done. */
  record Entry(long revision, String what) {}

  private static final int MOST_ENTRIES = 1000;
  private static final int MOST_UNDOS = 200;

  private Book(Path place, List<Path> dataRoots, int threads) {
    this.place = place;
    this.dataRoots = List.copyOf(dataRoots);
    this.threads = threads;
  }

  /**
   * Opens a study.
   *
   * @throws UnusableInput when it cannot be read
   */
  static Book open(Path studyFolder, int threads) throws UnusableInput, IOException {
    return open(studyFolder, List.of(), threads, study -> {});
  }

  /**
   * Opens a study.
   *
   * @param dataRoots folders that are confirmed as data roots
   * @param seen takes what the lab declares, before the longer work on it begins
   * @throws UnusableInput when it cannot be read
   */
  static Book open(Path studyFolder, List<Path> dataRoots, int threads, Consumer<Study> seen)
      throws UnusableInput, IOException {
    Book book = new Book(studyFolder, dataRoots, threads);
    synchronized (book) {
      book.begin("The workbench was opened.", seen);
    }
    return book;
  }

  /** How things stand. */
  Leaf leaf() {
    return Objects.requireNonNull(leaf, "an open book");
  }

  /** What was done so far, oldest first. */
  List<Entry> entries() {
    return List.copyOf(entries);
  }

  /** What someone else changed in the study's files since they were read, file by file. */
  List<ChangedOnDiskException> changedOnDisk() throws IOException {
    return files.changed();
  }

  /**
   * Leaves a capture out, or with an empty reason takes it back.
   *
   * @param unit whose capture the page showed in the line
   */
  synchronized void exclude(long revision, int line, String unit, String reason)
      throws StaleChangeException, ChangedOnDiskException, UnusableInput, IOException {
    refuseStale(revision);
    CaptureEntry entry =
        leaf().study().captures().stream()
            .filter(c -> c.line() == line)
            .findFirst()
            .orElseThrow(
                () ->
                    new UnusableInput(
                        Problem.fatal(
                            files.get(LabFiles.CAPTURES).name(),
                            line,
                            "no capture of the study stands in this line",
                            "go back to the unit and choose one of its captures")));
    if (!entry.unit().equals(unit)) {
      throw new UnusableInput(
          Problem.fatal(
              files.get(LabFiles.CAPTURES).name(),
              line,
              "a capture of `" + entry.unit() + "` stands in this line, none of `" + unit + "`",
              "open the unit's page again and choose one of its captures"));
    }
    byte[] before = files.get(LabFiles.CAPTURES).bytes();
    byte[] after = new MendedTable(before).with(line, "exclude", reason);
    String what =
        named(entry) + (reason.isEmpty() ? " was taken back." : " was left out: " + reason + ".");
    change(LabFiles.CAPTURES, after, what);
  }

  /** Writes a changed study.yaml, when the reader can read it. */
  synchronized void settle(long revision, StudyText text, String what)
      throws StaleChangeException, ChangedOnDiskException, UnusableInput, IOException {
    refuseStale(revision);
    byte[] after = text.text().getBytes(StandardCharsets.UTF_8);
    LabFile yaml = files.get(LabFiles.YAML);
    if (!yaml.holds(after)) {
      Trial.of(yaml, after, dataRoots);
      change(LabFiles.YAML, after, what);
    }
  }

  /** The text of study.yaml as it stands. */
  StudyText yaml() {
    return new StudyText(files.get(LabFiles.YAML).text());
  }

  /** How messages name study.yaml. */
  String yamlName() {
    return files.get(LabFiles.YAML).name();
  }

  /** Takes the last change back. */
  synchronized void undo(long revision)
      throws StaleChangeException, ChangedOnDiskException, UnusableInput, IOException {
    refuseStale(revision);
    Undo undo = undos.peek();
    if (undo == null) {
      return;
    }
    // The file may have been out of the study's sight meanwhile.
    LabFile now = files.get(undo.file());
    if (!now.holds(undo.after())) {
      throw new ChangedOnDiskException(
          now.name(), List.of("it is not what the change to be undone had left"));
    }
    Optional<String> next = undos.stream().skip(1).findFirst().map(Undo::what);
    write(undo.file(), undo.before(), "Undone: " + undo.what(), next);
    undos.pop();
  }

  /** Reads everything anew from the disk; what was done before cannot be undone after that. */
  synchronized void reload() throws UnusableInput, IOException {
    begin("The study was read anew from its files.", study -> {});
  }

  private void refuseStale(long revision) throws StaleChangeException {
    if (revision != leaf().revision()) {
      throw new StaleChangeException(
          entries.stream().filter(e -> e.revision() > revision).map(Entry::what).toList());
    }
  }

  private void change(int file, byte[] after, String what)
      throws ChangedOnDiskException, UnusableInput, IOException {
    byte[] before = files.get(file).bytes();
    write(file, after, what, Optional.of(what));
    undos.push(new Undo(file, before, after, what));
    if (undos.size() > MOST_UNDOS) {
      undos.removeLast();
    }
  }

  /** Writes a file and puts the new leaf on top; where that fails the file is as it was. */
  private void write(int file, byte[] bytes, String what, Optional<String> undo)
      throws ChangedOnDiskException, UnusableInput, IOException {
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
      files.follow(leaf().study());
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
    Optional<StudyOutcome> before = leaf == null ? Optional.empty() : leaf.outcome();
    Findings<List<Capture>> captures = new Findings<>(curves.of(study), curves.problems());
    StudyRun run = StudyRun.of(read, captures, before, threads);
    long revision = leaf == null ? 1 : leaf.revision() + 1;
    Leaf next =
        new Leaf(
            revision, what, study, run.fingerprint(), run.outcome(), before, undo, run.problems());
    entries.add(new Entry(revision, what));
    if (entries.size() > MOST_ENTRIES) {
      entries.remove(0);
    }
    leaf = next;
  }

  private static String named(CaptureEntry entry) {
    return entry.unit()
        + " on "
        + entry.fixture()
        + ", seating "
        + entry.seating()
        + " ("
        + entry.side()
        + "),";
  }
}
