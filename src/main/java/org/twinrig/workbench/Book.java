package org.twinrig.workbench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import org.twinrig.analysis.Analysis;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.intake.MendedTable;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.InputFingerprint;
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
  private final int threads;
  private final Deque<Undo> undos = new ArrayDeque<>();
  private final List<Entry> entries = new CopyOnWriteArrayList<>();
  private Curves curves;
  private final Object disk = new Object();
  private volatile List<LabFile> files = List.of();
  private volatile Leaf leaf;
  private volatile Optional<String> undoable = Optional.empty();

  /** A way back: the bytes a file had. */
  @SuppressWarnings("ArrayRecordComponent")
  private record Undo(int file, byte[] before, String what) {}

  /** One line of the book. */
  private record Entry(long revision, String what) {}

  /** Where the files stand in {@link Study#inputs()}. */
  private static final int YAML = 0;

  private static final int CAPTURES = 2;
  private static final int MOST_ENTRIES = 1000;
  private static final int MOST_UNDOS = 200;

  private Book(Path place, int threads) {
    this.place = place;
    this.threads = threads;
  }

  /**
   * Opens a study.
   *
   * @throws UnusableInput when it cannot be read
   */
  static Book open(Path studyFolder, int threads) throws UnusableInput, IOException {
    Book book = new Book(studyFolder, threads);
    synchronized (book) {
      book.begin("The workbench was opened.");
    }
    return book;
  }

  /** How things stand. */
  Leaf leaf() {
    return Objects.requireNonNull(leaf, "an open book");
  }

  /** What the next undo would take back. */
  Optional<String> undoable() {
    return undoable;
  }

  /** What was done so far, oldest first. */
  List<String> entries() {
    return entries.stream().map(Entry::what).toList();
  }

  /** What someone else changed in the study's files since they were read, file by file. */
  List<ChangedOnDiskException> changedOnDisk() throws IOException {
    synchronized (disk) {
      List<ChangedOnDiskException> changed = new ArrayList<>();
      for (LabFile file : files) {
        List<String> changes = file.changes();
        if (!changes.isEmpty()) {
          changed.add(new ChangedOnDiskException(file.name(), changes));
        }
      }
      return changed;
    }
  }

  /** Writes a file, unless any of the study's files was changed by others. */
  private void write(int file, byte[] bytes) throws ChangedOnDiskException, IOException {
    synchronized (disk) {
      refuseChanged();
      List<LabFile> now = new ArrayList<>(files);
      now.set(file, files.get(file).replacedBy(bytes));
      files = List.copyOf(now);
    }
  }

  /** Leaves a capture out, or with an empty reason takes it back. */
  synchronized void exclude(long revision, int line, String reason)
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
                            files.get(CAPTURES).name(),
                            line,
                            "no capture of the study stands in this line",
                            "go back to the unit and choose one of its captures")));
    byte[] before = files.get(CAPTURES).bytes();
    byte[] after = new MendedTable(before).with(line, "exclude", reason);
    String what =
        named(entry) + (reason.isEmpty() ? " was taken back." : " was left out: " + reason + ".");
    change(CAPTURES, after, what);
  }

  /** Writes a changed study.yaml, when the reader can read it. */
  synchronized void settle(long revision, StudyText text, String what)
      throws StaleChangeException, ChangedOnDiskException, UnusableInput, IOException {
    refuseStale(revision);
    byte[] after = text.text().getBytes(StandardCharsets.UTF_8);
    LabFile yaml = files.get(YAML);
    if (!yaml.holds(after)) {
      Trial.of(yaml, after);
      change(YAML, after, what);
    }
  }

  /** The text of study.yaml as it stands. */
  StudyText yaml() {
    return new StudyText(files.get(YAML).text());
  }

  /** Takes the last change back. */
  synchronized void undo(long revision)
      throws StaleChangeException, ChangedOnDiskException, UnusableInput, IOException {
    refuseStale(revision);
    Undo undo = undos.peek();
    if (undo == null) {
      return;
    }
    write(undo.file(), undo.before());
    undos.pop();
    turn("Undone: " + undo.what());
  }

  /** Reads everything anew from the disk; what was done before cannot be undone after that. */
  synchronized void reload() throws UnusableInput, IOException {
    begin("The study was read anew from its files.");
  }

  private void refuseStale(long revision) throws StaleChangeException {
    if (revision != leaf().revision()) {
      throw new StaleChangeException(
          entries.stream().filter(e -> e.revision() > revision).map(Entry::what).toList());
    }
  }

  /** The study is read whole after a change: a file changed by others would slip in unseen. */
  private void refuseChanged() throws ChangedOnDiskException, IOException {
    for (ChangedOnDiskException changed : changedOnDisk()) {
      throw changed;
    }
  }

  private void change(int file, byte[] after, String what)
      throws ChangedOnDiskException, UnusableInput, IOException {
    byte[] before = files.get(file).bytes();
    write(file, after);
    undos.push(new Undo(file, before, what));
    if (undos.size() > MOST_UNDOS) {
      undos.removeLast();
    }
    turn(what);
  }

  private void begin(String what) throws UnusableInput, IOException {
    Findings<Study> read = StudyReader.read(place);
    List<LabFile> seen = new ArrayList<>();
    for (Path input : read.value().inputs()) {
      seen.add(LabFile.read(input.toRealPath()));
    }
    synchronized (disk) {
      files = List.copyOf(seen);
    }
    curves = Curves.read(read.value(), threads);
    undos.clear();
    put(what, read);
  }

  private void turn(String what) throws UnusableInput, IOException {
    Findings<Study> read = StudyReader.read(place);
    if (!curves.serve(read.value())) {
      curves = Curves.read(read.value(), threads);
    }
    put(what, read);
  }

  private void put(String what, Findings<Study> read) throws UnusableInput {
    Study study = read.value();
    List<Capture> captures = curves.of(study);
    InputFingerprint fingerprint = InputFingerprint.of(study, captures);
    List<Problem> problems = new ArrayList<>(read.problems());
    problems.addAll(curves.problems());
    Optional<StudyOutcome> before = leaf == null ? Optional.empty() : leaf.outcome();
    Optional<StudyOutcome> outcome = Optional.empty();
    try {
      Analysis.FingerprintedCaptures named =
          new Analysis.FingerprintedCaptures(captures, fingerprint.shortText());
      outcome =
          Optional.of(
              before.isPresent()
                  ? Analysis.again(before.get(), study, named, threads)
                  : Analysis.of(study, captures, fingerprint.shortText(), threads));
      problems.addAll(outcome.get().problems());
    } catch (UnusableInput e) {
      problems.addAll(e.problems());
    }
    long revision = leaf == null ? 1 : leaf.revision() + 1;
    Leaf next = new Leaf(revision, what, study, fingerprint, outcome, before, problems);
    entries.add(new Entry(revision, what));
    if (entries.size() > MOST_ENTRIES) {
      entries.remove(0);
    }
    undoable = Optional.ofNullable(undos.peek()).map(Undo::what);
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
