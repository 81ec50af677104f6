package org.twinrig.study;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Capture;
import org.twinrig.internal.Numbers;
import org.twinrig.internal.Parallel;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.response.Anchor;
import org.twinrig.response.BandLevels;

/**
 * Puts captures on bands and pins them to the anchor, each by itself before any averaging.
 *
 * @param anchor where levels are pinned
 * @param anchorPerOctave bands per octave of the anchor's own mean
 * @param threads how many threads to work on
 */
public record Anchoring(BandGrid grid, Anchor anchor, int anchorPerOctave, int threads) {

  private record Pinned(Capture capture, double anchorDb) {}

  /**
   * The anchoring a study asks for.
   *
   * @param settings the study's settings
   * @param threads how many threads to work on
   */
  public static Anchoring of(Settings settings, int threads) {
    return new Anchoring(settings.grid(), settings.anchor(), settings.grid().perOctave(), threads);
  }

  /** The same anchoring onto other bands; levels stay pinned where they were. */
  public Anchoring onto(BandGrid other) {
    return new Anchoring(other, anchor, anchorPerOctave, threads);
  }

  /**
   * Anchors captures.
   *
   * @param captures corrected captures
   * @return those that reach the anchor, in order; the others are refused
   */
  public Findings<List<AnchoredCapture>> apply(List<Capture> captures) {
    List<OptionalDouble> levels =
        Parallel.map(captures, threads, c -> anchor.levelOf(c.response(), anchorPerOctave));
    List<Pinned> reached = new ArrayList<>();
    List<Problem> problems = new ArrayList<>();
    for (int i = 0; i < captures.size(); i++) {
      Capture capture = captures.get(i);
      if (levels.get(i).isPresent()) {
        double anchorDb = levels.get(i).getAsDouble();
        reached.add(new Pinned(capture.plus(-anchorDb), anchorDb));
      } else {
        String lacks =
            anchor
                .holeIn(capture.response(), anchorPerOctave)
                .orElseGet(
                    () ->
                        String.format(
                            "reaches from %s to %s and does not cover the anchor (%s)",
                            Numbers.hertz(capture.response().fromHz()),
                            Numbers.hertz(capture.response().toHz()),
                            anchor.words()));
        problems.add(
            Problem.refused(
                capture.entry().file(),
                0,
                "the capture " + lacks,
                "give a capture that covers it, or choose another `anchor` in study.yaml"));
      }
    }
    return new Findings<>(onBands(reached), problems);
  }

  /**
   * The same captures on this anchoring's bands, their levels as they are.
   *
   * @param anchored captures on other bands
   * @return in the same order
   */
  public List<AnchoredCapture> reband(List<AnchoredCapture> anchored) {
    return onBands(anchored.stream().map(a -> new Pinned(a.capture(), a.anchorDb())).toList());
  }

  private List<AnchoredCapture> onBands(List<Pinned> pinned) {
    return Parallel.map(
        pinned,
        threads,
        p -> new AnchoredCapture(p.capture, BandLevels.of(p.capture.response(), grid), p.anchorDb));
  }
}
