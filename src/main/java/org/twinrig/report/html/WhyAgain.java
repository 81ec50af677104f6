package org.twinrig.report.html;

import java.util.stream.Collectors;
import org.twinrig.reliability.Reason;
import org.twinrig.study.PublishingRule;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Translation;

/** Why a graph is to be measured again: where one reason decides alone, only that. */
final class WhyAgain {
  private WhyAgain() {}

  static String of(CatalogueRun.Line line, Translation translation) {
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
        : line.reasons().stream().map(Reason::plain).collect(Collectors.joining("; "));
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
}
