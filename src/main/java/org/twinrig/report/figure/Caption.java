package org.twinrig.report.figure;

import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;

/**
 * What every drawing of a kind carries: its name, how many units stand behind it, the confidence of
 * the intervals, and the study's fingerprint.
 */
public record Caption(String kind, int units, double confidence, String fingerprint) {

  public static Caption of(StudyOutcome outcome, KindOutcome kind) {
    return new Caption(
        kind.kind(),
        kind.paired().units().size(),
        outcome.study().settings().confidence(),
        outcome.fingerprint());
  }

  String percent() {
    return Math.round(100 * confidence) + " %";
  }

  /** A sheet whose title is what was found about the kind; the subtitle begins with the count. */
  Sheet sheet(String finding, String howToRead) {
    String counted = kind + ", n = " + units + (units == 1 ? " unit" : " units");
    return new Sheet(Figure.capital(kind) + ": " + finding, counted + howToRead, fingerprint);
  }

  String name(String prefix) {
    return Figure.nameOf(prefix, kind);
  }
}
