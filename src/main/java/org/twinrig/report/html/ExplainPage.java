package org.twinrig.report.html;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Numbers;
import org.twinrig.reliability.Mark;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.Zone;
import org.twinrig.report.figure.EverydayRegion;
import org.twinrig.report.figure.Stretch;
import org.twinrig.report.table.PlainZones;
import org.twinrig.study.Settings;
import org.twinrig.study.Tolerance;
import org.twinrig.translation.TranslatedGraph;

/** The page for the lab's own readers: what changed, and what may be compared where. */
public final class ExplainPage {
  /** How the first line of the page begins: by this an earlier page is known as ours. */
  public static final String FIRST_LINE =
      "<!DOCTYPE html><html lang=\"en\" data-page=\"twinrig explain\">";

  private final StudyOutcome outcome;
  private final Settings settings;

  private ExplainPage(StudyOutcome outcome) {
    this.outcome = outcome;
    this.settings = outcome.study().settings();
  }

  /**
   * Writes the page.
   *
   * @param outcome what the study found
   * @param example one old graph re-expressed, at least one band of which has a level; nothing when
   *     there is none to show
   * @return one self-contained page
   */
  public static String html(StudyOutcome outcome, Optional<TranslatedGraph> example) {
    return Page.fill("explain.jte", new ExplainPage(outcome).view(example));
  }

  private ExplainView view(Optional<TranslatedGraph> example) {
    List<List<Stretch>> stretches = new ArrayList<>();
    outcome.kinds().forEach(k -> stretches.add(Stretch.ofZones(k.zones())));
    unmeasured().forEach(k -> stretches.add(List.of()));
    MapTitle words = new MapTitle(stretches);
    return new ExplainView(
        outcome.study().title(),
        outcome.study().from().label(),
        outcome.study().to().label(),
        measured(),
        words.inShort(),
        marks(settings.tolerance()),
        new ExplainView.KindMap(
            words.title(), TrustedMarkup.of(EverydayRegion.axis()), kinds(), reasons()),
        new DifferenceWords(settings).of(outcome.kinds()),
        example.map(g -> ExampleWords.of(g, settings.confidence())),
        encoded(PlainZones.text(rows())),
        outcome.fingerprint());
  }

  private String measured() {
    int units = outcome.kinds().stream().mapToInt(k -> k.paired().units().size()).sum();
    return Numbers.count(units, "headphone", "headphones")
        + " of "
        + Numbers.count(outcome.kinds().size(), "kind", "kinds");
  }

  private List<ExplainView.Kind> kinds() {
    List<ExplainView.Kind> kinds = new ArrayList<>();
    outcome.kinds().forEach(k -> kinds.add(KindAdvice.of(k, settings.minUnits())));
    unmeasured().forEach(k -> kinds.add(KindAdvice.unmeasured(k)));
    return kinds;
  }

  /** Kinds the lab has units of, but none with captures on both fixtures that count. */
  private List<String> unmeasured() {
    Set<String> measured =
        outcome.kinds().stream().map(KindOutcome::kind).collect(Collectors.toSet());
    return outcome.study().units().stream()
        .filter(u -> u.role() == Unit.Role.FIT)
        .map(Unit::kind)
        .distinct()
        .filter(k -> !measured.contains(k))
        .toList();
  }

  /**
   * What is said of zones that are not free to compare; too few headphones stand with their kind.
   */
  private List<String> reasons() {
    return outcome.kinds().stream()
        .filter(k -> k.paired().units().size() >= settings.minUnits())
        .flatMap(k -> k.zones().stream())
        .filter(z -> !z.empty())
        .flatMap(z -> z.reasons().stream())
        .filter(r -> r != Reason.NO_DATA)
        .distinct()
        .sorted()
        .map(r -> VerdictSentence.capital(PlainReason.of(r)) + ".")
        .toList();
  }

  private List<PlainZones.Row> rows() {
    List<PlainZones.Row> rows = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      for (Zone zone : kind.zones()) {
        rows.add(
            new PlainZones.Row(
                kind.kind(),
                zone.fromHz(),
                zone.toHz(),
                Swatch.of(zone).word(),
                zone.empty() ? "nothing to compare" : advice(zone.mark()),
                PlainReason.of(zone, settings.zones())));
      }
    }
    return rows;
  }

  /** Percent-encoded for a data link: RFC 3986, 2.1; a form's plus for a blank is not that. */
  static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }

  private static String advice(Mark mark) {
    return switch (mark) {
      case RELIABLE -> "compare";
      case CAUTION -> "take care";
      case UNRELIABLE -> "do not compare";
    };
  }

  static List<Legend.Entry> marks(Tolerance tolerance) {
    double most =
        tolerance.reliable().steps().stream().mapToDouble(s -> s.db()).max().orElseThrow();
    return List.of(
        new Legend.Entry(
            Swatch.UNRELIABLE,
            "Do not compare old with new here. The old graph cannot tell us what the new fixture"
                + " would show. A difference you see here may come from the fixture alone. It says"
                + " nothing about the headphone. Only a new measurement can help."),
        new Legend.Entry(
            Swatch.CAUTION,
            "Take care. The result is less sure here. Look at the pale band around the re-expressed"
                + " graph. A new graph that runs inside the band may be no different at all."),
        new Legend.Entry(
            Swatch.RELIABLE,
            "Compare. The re-expressed graph can stand beside new ones. A difference of "
                + Numbers.fixed(most, 1)
                + " dB or less may still come from the move to the new fixture."),
        new Legend.Entry(Swatch.GAP, "Nothing was measured here."));
  }
}
