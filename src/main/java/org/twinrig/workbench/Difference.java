package org.twinrig.workbench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.workbench.view.StudyLeafView;

/** What a change of the study did to its kinds, in words and as strips. */
final class Difference {
  private static final int MOST_FLIPS = 12;

  private Difference() {}

  static List<StudyLeafView.Moved> between(StudyOutcome before, StudyOutcome after) {
    List<StudyLeafView.Moved> moved = new ArrayList<>();
    for (KindOutcome now : after.kinds()) {
      Optional<KindOutcome> then =
          before.kinds().stream().filter(k -> k.kind().equals(now.kind())).findFirst();
      if (then.isPresent() && !then.get().transfer().equals(now.transfer())) {
        moved.add(moved(then.get(), now));
      }
    }
    return moved;
  }

  private static StudyLeafView.Moved moved(KindOutcome then, KindOutcome now) {
    List<String> sentences = new ArrayList<>();
    for (Mark mark : Mark.values()) {
      String was = octaves(then, mark);
      String is = octaves(now, mark);
      if (!was.equals(is)) {
        sentences.add("Octaves " + mark.word() + ": " + was + " before, " + is + " now.");
      }
    }
    int units = now.paired().units().size() - then.paired().units().size();
    if (units != 0) {
      sentences.add(
          "Units: "
              + then.paired().units().size()
              + " before, "
              + now.paired().units().size()
              + " now.");
    }
    if (then.paired().grid().equals(now.paired().grid())) {
      sentences.add(largest(then, now));
      sentences.addAll(flips(then, now));
    } else {
      sentences.add("The bands are others than before.");
    }
    return new StudyLeafView.Moved(
        now.kind(),
        sentences,
        Strips.over(then.paired().grid()).runs("Marks before the change", bands(then)),
        Strips.over(now.paired().grid()).runs("Marks now", bands(now)));
  }

  private static List<MarkedBand> bands(KindOutcome kind) {
    return kind.transfer().bands();
  }

  private static String octaves(KindOutcome kind, Mark mark) {
    return Numbers.fixed(kind.transfer().octaves(mark), 2);
  }

  private static String largest(KindOutcome then, KindOutcome now) {
    double most = 0;
    double at = 0;
    for (int b = 0; b < bands(now).size(); b++) {
      if (bands(then).get(b).outcome() instanceof BandOutcome.Fitted old
          && bands(now).get(b).outcome() instanceof BandOutcome.Fitted fresh) {
        double moved = fresh.mean().meanDb() - old.mean().meanDb();
        if (Math.abs(moved) > Math.abs(most)) {
          most = moved;
          at = fresh.band().midHz();
        }
      }
    }
    return most == 0
        ? "The mean transfer did not move."
        : "The mean transfer moved most at "
            + Numbers.hertz(at)
            + ", by "
            + Numbers.fixed(most, 2)
            + " dB.";
  }

  /** Runs of bands that changed alike, so that a whole zone is one sentence. */
  private static List<String> flips(KindOutcome then, KindOutcome now) {
    List<String> flips = new ArrayList<>();
    int untold = 0;
    for (int b = 0; b < bands(now).size(); b++) {
      String flip = flip(then, now, b);
      int first = b;
      while (b + 1 < bands(now).size() && flip(then, now, b + 1).equals(flip)) {
        b++;
      }
      if (!flip.isEmpty() && flips.size() < MOST_FLIPS) {
        flips.add(range(now, first, b) + ": " + flip);
      } else if (!flip.isEmpty()) {
        untold += b - first + 1;
      }
    }
    if (flips.isEmpty()) {
      return List.of("No band changed its mark.");
    }
    if (untold > 0) {
      flips.add("And " + Numbers.count(untold, "band", "bands") + " more changed marks.");
    }
    return flips;
  }

  private static String flip(KindOutcome then, KindOutcome now, int band) {
    String was = word(bands(then).get(band));
    String is = word(bands(now).get(band));
    return was.equals(is) ? "" : was + " before, " + is + " now.";
  }

  private static String range(KindOutcome kind, int first, int last) {
    String from = Numbers.hertz(bands(kind).get(first).band().midHz());
    return first == last
        ? from
        : from + " to " + Numbers.hertz(bands(kind).get(last).band().midHz());
  }

  private static String word(MarkedBand band) {
    return band.empty() ? "no data" : band.mark().word();
  }
}
