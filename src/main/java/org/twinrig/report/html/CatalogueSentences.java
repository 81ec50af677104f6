package org.twinrig.report.html;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Reason;
import org.twinrig.study.PublishingRule;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Translation;
import org.twinrig.translation.Treatment;

/** What a catalogue's report words by rules; the prose around it is the template's. */
public final class CatalogueSentences {
  private CatalogueSentences() {}

  /** Why a graph is to be measured again: where one reason decides alone, only that. */
  public static String whyAgain(CatalogueRun.Line line, Translation translation) {
    boolean measured =
        translation
            .kind(line.entry().kind())
            .filter(k -> k.unitNames().contains(line.entry().unit()))
            .isPresent();
    return (measured ? "the study has this unit on the new fixture: publish that; " : "")
        + reasons(line, translation);
  }

  private static String reasons(CatalogueRun.Line line, Translation translation) {
    String kind = line.entry().kind();
    if (line.reasons().contains(Reason.KIND_NOT_IN_THE_STUDY)) {
      return Reason.KIND_NOT_IN_THE_STUDY.plain();
    }
    boolean tooFew =
        translation.kindsWithTooFewUnits().stream().anyMatch(k -> k.kind().equals(kind));
    if (tooFew && line.reasons().contains(Reason.FEW_UNITS)) {
      return Reason.FEW_UNITS.plain();
    }
    boolean unknown = kind.equals(Translation.UNKNOWN_KIND);
    if (unknown && translation.candidatesForUnknown().isEmpty()) {
      return "the kind is not known, and the study has enough units of none";
    }
    if (unknown && coversEnough(line, translation)) {
      return "the kind is not known, so the interval must cover every kind of the study with enough"
          + " units";
    }
    return line.reasons().isEmpty()
        ? "the old graph has no level over too much of the range"
        : plain(line.reasons());
  }

  public static String plain(List<Reason> reasons) {
    return reasons.stream().map(Reason::plain).collect(Collectors.joining("; "));
  }

  /** Whether what the graph does not cover would leave it publishable. */
  private static boolean coversEnough(CatalogueRun.Line line, Translation translation) {
    PublishingRule rule = translation.handling().publishing();
    double missingOctaves = 0;
    for (int b = 0; b < translation.grid().size(); b++) {
      boolean missing = line.marks().at(b).isEmpty();
      if (missing && rule.compares(translation.grid().band(b).midHz())) {
        missingOctaves += translation.grid().band(b).octaves();
      }
    }
    return missingOctaves <= rule.lostOctaves();
  }

  /** What was taken for granted of graphs that do not say how far they were smoothed. */
  public static Optional<String> smoothingNotStated(List<CatalogueRun.Line> lines) {
    long notStated = lines.stream().filter(l -> l.entry().smoothing().isEmpty()).count();
    return notStated == 0
        ? Optional.empty()
        : Optional.of(
            Numbers.count(notStated, "graph does", "graphs do")
                + " not state any smoothing and "
                + (notStated == 1 ? "is" : "are")
                + " taken as not smoothed.");
  }

  public static long count(Treatment.SmoothingMatch match, List<CatalogueRun.Line> lines) {
    return lines.stream().filter(l -> l.treatment().smoothing() == match).count();
  }
}
