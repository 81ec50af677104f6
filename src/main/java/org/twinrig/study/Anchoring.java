package org.twinrig.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Capture;
import org.twinrig.internal.Numbers;
import org.twinrig.internal.Parallel;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;

/**
 * Puts captures on bands and pins them to the anchor, each by itself before any averaging.
 *
 * @param anchorPerOctave bands per octave of the anchor's own mean
 * @param threads how many threads to work on
 */
public record Anchoring(BandGrid grid, Anchor anchor, int anchorPerOctave, int threads) {

  /** The anchoring a study asks for. */
  public static Anchoring of(Settings settings, int threads) {
    return new Anchoring(settings.grid(), settings.anchor(), settings.grid().perOctave(), threads);
  }

  /** The same anchoring onto other bands; levels stay pinned where they were. */
  public Anchoring onto(BandGrid other) {
    return new Anchoring(other, anchor, anchorPerOctave, threads);
  }

  /** Anchors corrected captures: those that reach the anchor, in order; the others are refused. */
  public Findings<List<AnchoredCapture>> apply(List<Capture> captures) {
    List<Optional<AnchoredCapture>> anchored = Parallel.map(captures, threads, this::anchored);
    List<Problem> problems = new ArrayList<>();
    for (int i = 0; i < captures.size(); i++) {
      if (anchored.get(i).isEmpty()) {
        problems.add(refused(captures.get(i)));
      }
    }
    return new Findings<>(anchored.stream().flatMap(Optional::stream).toList(), problems);
  }

  /** Captures on other bands on this anchoring's bands, in order, their levels as they are. */
  public List<AnchoredCapture> reband(List<AnchoredCapture> anchored) {
    return Parallel.map(anchored, threads, a -> onBands(a.capture(), a.anchorDb()));
  }

  private Optional<AnchoredCapture> anchored(Capture capture) {
    OptionalDouble level = anchor.levelOf(capture.response(), anchorPerOctave);
    return level.isPresent()
        ? Optional.of(onBands(capture.plus(-level.getAsDouble()), level.getAsDouble()))
        : Optional.empty();
  }

  private AnchoredCapture onBands(Capture pinned, double anchorDb) {
    return new AnchoredCapture(pinned, Levels.of(pinned.response(), grid), anchorDb);
  }

  private Problem refused(Capture capture) {
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
    return Problem.refused(
        capture.entry().file(),
        0,
        "the capture " + lacks,
        "give a capture that covers it, or choose another `anchor` in study.yaml");
  }
}
