package org.twinrig.workbench;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Side;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.spectrum.SoundContent;
import org.twinrig.study.CaptureReading;
import org.twinrig.study.Study;

/**
 * The curves of a study's captures, read once. What a row of the table says besides its file does
 * not change its curve.
 *
 * @param sound how sound files were taken
 * @param folder what the names of files are relative to
 * @param asked every file and side that was read, refused ones too
 * @param bySource one capture per file and side
 * @param problems met while reading
 */
record Curves(
    SoundContent sound,
    Path folder,
    Set<Source> asked,
    Map<Source, Capture> bySource,
    List<Problem> problems) {

  /** Where a curve comes from. */
  record Source(String file, Side side) {
    static Source of(CaptureEntry entry) {
      return new Source(entry.file(), entry.side());
    }
  }

  static Curves read(Study study, int threads) {
    Findings<List<Capture>> read = CaptureReading.read(study, threads);
    Map<Source, Capture> curves = new HashMap<>();
    read.value().forEach(c -> curves.put(Source.of(c.entry()), c));
    return new Curves(
        study.settings().sound(),
        study.capturesFolder(),
        sources(study),
        Map.copyOf(curves),
        read.problems());
  }

  /** The captures of a study; files that were refused are left out again. */
  List<Capture> of(Study study) {
    List<Capture> captures = new ArrayList<>();
    for (CaptureEntry entry : study.captures()) {
      Optional.ofNullable(bySource.get(Source.of(entry)))
          .ifPresent(c -> captures.add(new Capture(entry, c.response(), c.sha256())));
    }
    return captures;
  }

  /** Whether a study's curves are all here. */
  boolean serve(Study study) {
    return sound.equals(study.settings().sound())
        && folder.equals(study.capturesFolder())
        && asked.equals(sources(study));
  }

  private static Set<Source> sources(Study study) {
    return study.captures().stream().map(Source::of).collect(Collectors.toSet());
  }
}
