package org.twinrig.workbench;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Side;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.study.CaptureReading;
import org.twinrig.study.Study;

/**
 * The curves of a study's captures, read once. What a row of the table says besides its file does
 * not change its curve.
 *
 * @param read the study whose files were read, refused ones too
 * @param bySource one capture per file and side
 */
record Curves(Study read, Map<Source, Capture> bySource, List<Problem> problems) {

  record Source(String file, Side side) {
    static Source of(CaptureEntry entry) {
      return new Source(entry.file(), entry.side());
    }
  }

  static Curves read(Study study, int threads) {
    Findings<List<Capture>> read = CaptureReading.read(study, threads);
    return new Curves(
        study,
        read.value().stream()
            .collect(Collectors.toMap(c -> Source.of(c.entry()), c -> c, (first, last) -> last)),
        read.problems());
  }

  /** The captures of a study; files that were refused are left out again. */
  Findings<List<Capture>> of(Study study) {
    return new Findings<>(
        study.captures().stream()
            .filter(entry -> bySource.containsKey(Source.of(entry)))
            .map(entry -> captured(entry, bySource.get(Source.of(entry))))
            .toList(),
        problems);
  }

  private static Capture captured(CaptureEntry entry, Capture curve) {
    return new Capture(entry, curve.response(), curve.sha256());
  }

  /** Whether a study's curves are all here. */
  boolean serve(Study study) {
    return read.settings().sound().equals(study.settings().sound())
        && read.capturesFolder().equals(study.capturesFolder())
        && sources(read).equals(sources(study));
  }

  private static Set<Source> sources(Study study) {
    return study.captures().stream().map(Source::of).collect(Collectors.toSet());
  }
}
