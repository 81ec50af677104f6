package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Reason;
import org.twinrig.study.PublishingRule;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.Translation;
import org.twinrig.translation.Treatment;

/** What a catalogue's report words by rules; the prose around it is the template's. */
public final class CatalogueSentences {
  private CatalogueSentences() {}

  /** One sentence per kind with fewer units than the study asks for. */
  public static List<String> tooFewUnits(Translation translation) {
    return translation.kindsWithTooFewUnits().stream()
        .map(
            k ->
                "Too little evidence for "
                    + k.kind()
                    + ": the study has "
                    + Numbers.count(k.units(), "unit", "units")
                    + " and asks for "
                    + translation.minUnits()
                    + ", so nothing it translates is reliable.")
        .toList();
  }

  /** The kinds that a graph of unknown kind is held to be one of; empty where there is none. */
  public static String candidatesForUnknown(Translation translation) {
    return translation.candidatesForUnknown().stream()
        .map(TransferFunction::kind)
        .collect(Collectors.joining(", "));
  }

  /** Why a graph is to be measured again: where one reason decides alone, only that. */
  static String whyAgain(CatalogueRun.Line line, Translation translation) {
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
    return line.reasons().stream().map(Reason::plain).collect(Collectors.joining("; "));
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

  /** How graphs were met that are not smoothed as the study's captures are. */
  public static List<String> smoothing(Translation translation, List<CatalogueRun.Line> lines) {
    List<String> rules = new ArrayList<>(smoothingNotStated(lines).stream().toList());
    for (Treatment.SmoothingMatch match : Treatment.SmoothingMatch.values()) {
      long count = lines.stream().filter(l -> l.treatment().smoothing() == match).count();
      if (count > 0 && match != Treatment.SmoothingMatch.ALIKE) {
        rules.add(Numbers.count(count, "graph", "graphs") + ": " + met(match, translation));
      }
    }
    return rules;
  }

  private static String met(Treatment.SmoothingMatch match, Translation translation) {
    String captures =
        " than the study's captures (" + translation.handling().captureSmoothing().plain() + ")";
    return switch (match) {
      case ALIKE -> "smoothed as the study's captures are.";
      case GRAPH_SMOOTHED ->
          "smoothed less" + captures + ", so they were smoothed alike first; so is the result.";
      case STUDY_SMOOTHED ->
          "smoothed more"
              + captures
              + ", so the captures were smoothed alike and the study fitted anew for them.";
      case FINER_THAN_BANDS ->
          "smoothed more" + captures + ", but over less than a band, which averages as much.";
      case MARKED ->
          "smoothed more"
              + captures
              + " and over a band or more; the captures were not at hand to be smoothed alike, so"
              + " every band is marked. Translate with the study's folder to avoid this.";
    };
  }
}
