package org.twinrig.report.html;

import java.util.List;
import java.util.Locale;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.Zone;

/** One sentence per kind: how much of it can be trusted, and what must not be. */
final class VerdictSentence {
  private VerdictSentence() {}

  static String of(KindOutcome kind) {
    Octaves octaves = Octaves.of(kind);
    String who = capital(kind.kind()) + " (" + units(kind) + "): ";
    if (octaves.of(Swatch.RELIABLE) == 0) {
      return who + "no band translates reliably; " + firstReason(kind) + ".";
    }
    return who
        + Numbers.fixed(octaves.of(Swatch.RELIABLE), 1)
        + " of "
        + Numbers.fixed(octaves.total(), 1)
        + " octaves translate reliably; "
        + rest(kind, octaves);
  }

  private static String rest(KindOutcome kind, Octaves octaves) {
    List<String> lost =
        kind.zones().stream()
            .filter(z -> z.mark() == Mark.UNRELIABLE && !z.empty())
            .map(z -> Numbers.hertz(z.fromHz()) + " to " + Numbers.hertz(z.toHz()))
            .toList();
    if (!lost.isEmpty()) {
      return "do not translate " + String.join(" or ", lost) + ".";
    }
    return octaves.of(Swatch.GAP) > 0
        ? "no zone is unreliable, but "
            + Numbers.fixed(octaves.of(Swatch.GAP), 1)
            + " octaves have no data."
        : "no zone is unreliable.";
  }

  /**
   * The name as a sentence begins with it; a first letter outside the basic plane is kept whole.
   */
  static String capital(String name) {
    int end = name.offsetByCodePoints(0, 1);
    return name.substring(0, end).toUpperCase(Locale.ROOT) + name.substring(end);
  }

  private static String units(KindOutcome kind) {
    return Numbers.count(kind.paired().units().size(), "unit", "units");
  }

  private static String firstReason(KindOutcome kind) {
    // Bands beyond the captures are no reason: exports that begin at 20 Hz lack the lowest.
    return kind.zones().stream()
        .filter(zone -> !zone.empty())
        .map(Zone::reasons)
        .flatMap(List::stream)
        .sorted()
        .findFirst()
        .map(Reason::plain)
        .orElse("nothing was measured");
  }
}
