package org.twinrig.workbench;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.MarkedBand;

/** A kind that a change of the study moved. */
public record KindChange(KindOutcome then, KindOutcome now) {
  private static final int MOST_FLIPS = 12;

  /** The kinds that the last change moved. */
  public static List<KindChange> of(Snapshot snapshot) {
    List<KindChange> moved = new ArrayList<>();
    for (KindOutcome now : snapshot.kinds()) {
      snapshot.before().stream()
          .flatMap(before -> before.kinds().stream())
          .filter(then -> then.kind().equals(now.kind()))
          .filter(then -> !then.transfer().equals(now.transfer()))
          .forEach(then -> moved.add(new KindChange(then, now)));
    }
    return moved;
  }

  /** What moved: octaves by mark, units, the mean transfer, and bands that changed their mark. */
  public List<String> sentences() {
    List<String> sentences = new ArrayList<>();
    for (Mark mark : Mark.values()) {
      String was = octaves(then, mark);
      String is = octaves(now, mark);
      if (!was.equals(is)) {
        sentences.add("Octaves " + mark.word() + ": " + was + " before, " + is + " now.");
      }
    }
    int was = then.paired().units().size();
    int is = now.paired().units().size();
    if (was != is) {
      sentences.add("Units: " + was + " before, " + is + " now.");
    }
    if (then.paired().grid().equals(now.paired().grid())) {
      sentences.add(largest());
      sentences.addAll(flips());
    } else {
      sentences.add("The bands are others than before.");
    }
    return sentences;
  }

  private static List<MarkedBand> bands(KindOutcome kind) {
    return kind.transfer().bands();
  }

  private static String octaves(KindOutcome kind, Mark mark) {
    return Numbers.fixed(kind.transfer().octaves(mark), 2);
  }

  private String largest() {
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
  private List<String> flips() {
    List<String> flips = new ArrayList<>();
    int untold = 0;
    for (int b = 0; b < bands(now).size(); b++) {
      String flip = flip(b);
      int first = b;
      while (b + 1 < bands(now).size() && flip(b + 1).equals(flip)) {
        b++;
      }
      if (!flip.isEmpty() && flips.size() < MOST_FLIPS) {
        flips.add(range(first, b) + ": " + flip);
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

  private String flip(int band) {
    String was = Strip.word(bands(then).get(band));
    String is = Strip.word(bands(now).get(band));
    return was.equals(is) ? "" : was + " before, " + is + " now.";
  }

  private String range(int first, int last) {
    String from = Numbers.hertz(bands(now).get(first).band().midHz());
    return first == last
        ? from
        : from + " to " + Numbers.hertz(bands(now).get(last).band().midHz());
  }
}
