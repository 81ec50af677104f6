package org.twinrig.workbench;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.MarkedBand;

/** A kind that a change of the study moved. */
public record KindChange(KindOutcome then, KindOutcome now) {
  private static final int MOST_FLIPS = 12;

  public record Move(double atHz, double db) {}

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

  /** The move of the mean transfer that is largest; 0 dB where none moved. */
  public Move largest() {
    Move most = new Move(0, 0);
    for (int b = 0; b < now.transfer().bands().size(); b++) {
      if (then.transfer().bands().get(b).outcome() instanceof BandOutcome.Fitted old
          && now.transfer().bands().get(b).outcome() instanceof BandOutcome.Fitted fresh) {
        double db = fresh.mean().meanDb() - old.mean().meanDb();
        most = Math.abs(db) > Math.abs(most.db) ? new Move(fresh.band().midHz(), db) : most;
      }
    }
    return most;
  }

  /** Runs of bands whose mark changed alike, so that a whole zone is one sentence. */
  public List<String> flips() {
    List<MarkedBand> bands = now.transfer().bands();
    List<String> flips = new ArrayList<>();
    int untold = 0;
    for (int b = 0; b < bands.size(); b++) {
      String flip = flip(b);
      int first = b;
      while (b + 1 < bands.size() && flip(b + 1).equals(flip)) {
        b++;
      }
      if (!flip.isEmpty() && flips.size() < MOST_FLIPS) {
        String from = Numbers.hertz(bands.get(first).band().midHz());
        String to = Numbers.hertz(bands.get(b).band().midHz());
        flips.add((first == b ? from : from + " to " + to) + ": " + flip);
      } else if (!flip.isEmpty()) {
        untold += b - first + 1;
      }
    }
    if (untold > 0) {
      flips.add("And " + Numbers.count(untold, "band", "bands") + " more changed marks.");
    }
    return flips;
  }

  private String flip(int band) {
    String was = Strip.word(then.transfer().bands().get(band));
    String is = Strip.word(now.transfer().bands().get(band));
    return was.equals(is) ? "" : was + " before, " + is + " now.";
  }
}
