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

  /**
   * Reads every capture file, so many at once: the captures in the order of the table without those
   * whose file was refused, before any correction; and the problems in the same order.
   *
   * @throws IllegalStateException when the calling thread is interrupted
   */
  public static Findings<List<Capture>> read(Study study, int threads) {
    List<Capture> captures = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    for (Findings<Optional<Capture>> each :
        Parallel.map(study.captures(), threads, entry -> one(study, entry))) {
      problems.addAll(each.problems());
      each.value().ifPresent(captures::add);
    }
    problems.addAll(copies(captures));
    return new Findings<>(List.copyOf(captures), problems);
  }

  private static Findings<Optional<Capture>> one(Study study, CaptureEntry entry) {
    if (Thread.currentThread().isInterrupted()) {
      throw new CancellationException("the reading of captures was interrupted");
    }
    try {
      Path file = study.capturesFolder().resolve(entry.file());
      var reading = CaptureFile.read(file, entry.file(), study.settings().sound(), entry.side());
      Capture capture = new Capture(entry, reading.response(), reading.sha256());
      return new Findings<>(
          Optional.of(capture), placed(reading.notes(), entry, Problem.Kind.NOTE));
    } catch (UnusableInput e) {
      return new Findings<>(Optional.empty(), placed(e.problems(), entry, Problem.Kind.REFUSED));
    }
  }

  /** The file is what is wrong, but the lab finds it by the row that names it. */
  private static List<Problem> placed(
      List<Problem> problems, CaptureEntry entry, Problem.Kind kind) {
    String row = " (line " + entry.line() + " of the table of captures)";
    List<Problem> placed = new ArrayList<>();
    for (Problem p : problems) {
      Problem.Kind as = p.remedy().isBlank() ? Problem.Kind.NOTE : kind;
      placed.add(new Problem(as, p.source(), p.line(), p.what() + row, p.remedy()));
    }
    return placed;
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
                String.format(
                    "has the same content as `%s` (lines %s and %s of the table of captures)",
                    earlier.file(), entry.line(), earlier.line())));
      }
    }
    return notes;
  }
}
