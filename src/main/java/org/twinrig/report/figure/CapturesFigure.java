package org.twinrig.report.figure;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.response.Anchor;
import org.twinrig.screening.Verdict;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Study;

/** All seatings of one unit on both fixtures. */
public final class CapturesFigure {
  private static final double LEAST_RANGE_DB = 10;

  /** A deep notch would squeeze everything else: the axis does not follow it further. */
  private static final double LOWEST_DB = -40;

  private CapturesFigure() {}

  /** Draws a unit of a kind; nothing where none of its captures could be used. */
  public static Optional<Figure> of(StudyOutcome outcome, String unit, String kind) {
    List<AnchoredCapture> captures =
        outcome.captures().stream().filter(c -> entry(c).unit().equals(unit)).toList();
    if (captures.isEmpty()) {
      return Optional.empty();
    }
    Set<CaptureEntry> leftOut = leftOut(outcome);
    double lowest = -LEAST_RANGE_DB;
    double highest = LEAST_RANGE_DB;
    for (AnchoredCapture capture : captures) {
      lowest = Math.max(LOWEST_DB, Values.least(lowest, Values.levels(capture.levels())));
      highest = Values.greatest(highest, Values.levels(capture.levels()));
    }
    Anchor anchor = outcome.study().settings().anchor();
    Plot plot =
        Plot.overFrequency(Axis.levels(Axis.lined(anchor), lowest - 1, highest + 1))
            .linedUp(anchor);
    add(plot, captures, outcome.study(), leftOut);
    long out = captures.stream().filter(c -> leftOut.contains(entry(c))).count();
    String title =
        "%s: %s captures on two fixtures%s"
            .formatted(unit, captures.size(), out == 0 ? "" : ", " + out + " left out");
    return Optional.of(
        new Sheet(
                title,
                kind + "; every line is one seating of one side; dotted: left out",
                outcome.fingerprint())
            .overFrequency(plot, List.of())
            .figure(
                Figure.nameOf("captures", unit),
                "Levels of every seating against frequency on both fixtures"));
  }

  /** The key names each fixture by its first line that was not left out. */
  private static void add(
      Plot plot, List<AnchoredCapture> captures, Study study, Set<CaptureEntry> leftOut) {
    Set<Fixture> named = new HashSet<>();
    for (AnchoredCapture capture : captures) {
      boolean onNew = entry(capture).fixture().equals(study.to().name());
      Fixture fixture = onNew ? study.to() : study.from();
      Ink.Pen pen = onNew ? Ink.NEW_THIN : Ink.OLD;
      boolean out = leftOut.contains(entry(capture));
      plot.line(
          Values.of(capture.levels().grid().bands(), b -> b.midHz()),
          Values.levels(capture.levels()),
          out ? new Ink.Pen(pen.colour(), Ink.DOTTED) : pen,
          !out && named.add(fixture) ? fixture.label() : "");
    }
  }

  /** What the screening or the lab left out. */
  static Set<CaptureEntry> leftOut(StudyOutcome outcome) {
    Set<CaptureEntry> out = new HashSet<>();
    outcome.screening().verdicts().stream()
        .filter(Verdict::excluded)
        .forEach(v -> out.add(v.capture()));
    outcome.study().captures().stream().filter(CaptureEntry::excludedByLab).forEach(out::add);
    return out;
  }

  private static CaptureEntry entry(AnchoredCapture capture) {
    return capture.capture().entry();
  }
}
