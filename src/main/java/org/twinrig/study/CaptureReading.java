package org.twinrig.study;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.intake.CaptureFile;
import org.twinrig.internal.Parallel;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Response;

/** Reads the files of a study's captures, those the lab excluded too: figures show them. */
public final class CaptureReading {
  private CaptureReading() {}

  /** One row's capture, or nothing when its file was refused, and what was found. */
  private record One(Optional<Capture> capture, List<Problem> problems) {}

  /**
   * Reads every capture file.
   *
   * @param study names the files
   * @param threads how many files are read at once, 1 or more; does not change the result
   * @return the captures in the order of the table without those whose file was refused, before any
   *     correction; and the problems in the same order
   * @throws IllegalArgumentException when there is no thread
   * @throws IllegalStateException when the calling thread is interrupted
   */
  public static Findings<List<Capture>> read(Study study, int threads) {
    List<Capture> captures = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    for (One each : Parallel.map(study.captures(), threads, entry -> one(study, entry))) {
      problems.addAll(each.problems());
      each.capture().ifPresent(captures::add);
    }
    problems.addAll(copies(captures));
    return new Findings<>(List.copyOf(captures), problems);
  }

  private static One one(Study study, CaptureEntry entry) {
    if (Thread.currentThread().isInterrupted()) {
      throw new CancellationException("the reading of captures was interrupted");
    }
    try {
      Path file = study.capturesFolder().resolve(entry.file());
      var reading = CaptureFile.read(file, entry.file(), study.settings().sound(), entry.side());
      Capture capture = new Capture(entry, reading.response(), reading.sha256());
      return new One(Optional.of(capture), placed(reading.notes(), entry, Problem.Kind.NOTE));
    } catch (UnusableInput e) {
      return new One(Optional.empty(), placed(e.problems(), entry, Problem.Kind.REFUSED));
    }
  }

  /** The file is what is wrong, but the lab finds it by the row that names it. */
  private static List<Problem> placed(
      List<Problem> problems, CaptureEntry entry, Problem.Kind kind) {
    String row = " (line " + entry.line() + " of the table of captures)";
    return problems.stream()
        .map(
            p ->
                new Problem(
                    p.remedy().isBlank() ? Problem.Kind.NOTE : kind,
                    p.source(),
                    p.line(),
                    p.what() + row,
                    p.remedy()))
        .toList();
  }

  /** A file and the curve taken from it: the two channels of a stereo file are no copies. */
  private record Content(String sha256, Response response) {}

  /** One curve under two names makes seatings look more alike than they are. */
  private static List<Problem> copies(List<Capture> captures) {
    Map<Content, CaptureEntry> first = new HashMap<>();
    List<Problem> notes = new ArrayList<>();
    for (Capture capture : captures) {
      CaptureEntry entry = capture.entry();
      Content content = new Content(capture.sha256(), capture.response());
      CaptureEntry earlier = first.putIfAbsent(content, entry);
      if (earlier != null) {
        notes.add(
            Problem.note(
                entry.file(),
                0,
                "has the same content as `"
                    + earlier.file()
                    + "` (lines "
                    + entry.line()
                    + " and "
                    + earlier.line()
                    + " of the table of captures)"));
      }
    }
    return notes;
  }
}
