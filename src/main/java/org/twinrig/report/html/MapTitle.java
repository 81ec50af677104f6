package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.report.figure.EverydayRegion;
import org.twinrig.report.figure.Stretch;

/**
 * What the strips of all kinds say together.
 *
 * @param kinds the stretches of every kind; none of a kind that was never measured on both
 */
record MapTitle(List<List<Stretch>> kinds) {

  /** The finding, as the heading of the strips. */
  String title() {
    List<List<Stretch>> partly = kinds.stream().filter(k -> !lost(k)).toList();
    if (partly.isEmpty()) {
      return "Old and new graphs cannot be compared anywhere yet";
    }
    String lost = lostSentence(kinds.size() - partly.size());
    List<Stretch> hatched = all(Mark.UNRELIABLE, partly);
    if (hatched.isEmpty()) {
      String care =
          all(Mark.CAUTION, partly).isEmpty()
              ? "can be compared wherever they were measured"
              : "can be compared, in places with care";
      return "Old and new graphs " + care + lost;
    }
    return "Old and new graphs cannot be compared in the hatched zones, " + where(hatched) + lost;
  }

  /** What to do, in plain sentences. */
  String inShort() {
    boolean anyUsed = !all(Mark.RELIABLE, kinds).isEmpty() || !all(Mark.CAUTION, kinds).isEmpty();
    if (!anyUsed) {
      return "Do not compare old graphs with new ones. For now, that cannot be done anywhere.";
    }
    List<String> words = new ArrayList<>();
    words.add("Put a new graph beside a re-expressed old one, never beside the old one itself.");
    if (!all(Mark.RELIABLE, kinds).isEmpty()) {
      words.add("Compare them where the bar is full.");
    }
    if (!all(Mark.CAUTION, kinds).isEmpty()) {
      words.add("Take care where the bar is half.");
    }
    if (!all(Mark.UNRELIABLE, kinds).isEmpty()) {
      words.add("Do not compare them at all where you see hatching.");
    }
    return String.join(" ", words);
  }

  private String lostSentence(int lost) {
    return lost == 0
        ? ""
        : "; besides, "
            + Numbers.count(lost, "kind", "kinds")
            + " of "
            + kinds.size()
            + " cannot be compared at all";
  }

  /** Nothing but hatching where there are data. */
  private static boolean lost(List<Stretch> kind) {
    return kind.stream().noneMatch(s -> s.is(Mark.RELIABLE) || s.is(Mark.CAUTION));
  }

  static List<Stretch> all(Mark mark, List<List<Stretch>> kinds) {
    return kinds.stream().flatMap(List::stream).filter(s -> s.is(mark)).toList();
  }

  /** The region that holds more than half of the hatching, or all that hold some. */
  private static String where(List<Stretch> hatched) {
    double sum = 0;
    for (EverydayRegion region : EverydayRegion.values()) {
      sum += octaves(region, hatched);
    }
    List<String> some = new ArrayList<>();
    for (EverydayRegion region : EverydayRegion.values()) {
      double part = octaves(region, hatched);
      if (part >= sum - 1e-9) {
        return "in the " + region.word();
      }
      if (part > 0.5 * sum + 1e-9) {
        return "mostly in the " + region.word();
      }
      if (part > 0) {
        some.add(region.word());
      }
    }
    return "in the " + PlainRange.joined(some);
  }

  private static double octaves(EverydayRegion region, List<Stretch> stretches) {
    return stretches.stream().mapToDouble(region::octavesOf).sum();
  }
}
