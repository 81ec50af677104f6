package org.twinrig.workbench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.evidence.BandBudget;
import org.twinrig.evidence.Contribution;
import org.twinrig.evidence.ErrorSource;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.Zone;
import org.twinrig.report.html.Swatch;
import org.twinrig.study.BandSample;
import org.twinrig.study.DeclaredZone;
import org.twinrig.workbench.view.Frame;
import org.twinrig.workbench.view.Link;
import org.twinrig.workbench.view.Strip;
import org.twinrig.workbench.view.ZonesView;

/** Why a band or zone is marked: units, their differences, the model, the error budget. */
final class ZonesPages {
  private final Book book;
  private final Pages pages;
  private final Drawings drawings;

  ZonesPages(Book book, Pages pages, Drawings drawings) {
    this.book = book;
    this.pages = pages;
    this.drawings = drawings;
  }

  Answer zones(Ask ask) throws IOException {
    Leaf leaf = book.leaf();
    List<Link> kinds =
        leaf.outcome().stream()
            .flatMap(o -> o.kinds().stream())
            .map(k -> new Link(k.kind(), path(k.kind())))
            .toList();
    Frame frame = Pages.frame(book, Frame.Part.ZONES, "Zones", "/zones");
    Optional<KindOutcome> kind =
        Drawings.kind(leaf, ask.text("kind"))
            .or(() -> leaf.outcome().stream().flatMap(o -> o.kinds().stream()).findFirst());
    ZonesView view =
        kind.map(k -> view(frame, kinds, leaf, k, ask.hertz("hz")))
            .orElseGet(
                () ->
                    new ZonesView(
                        frame,
                        "",
                        kinds,
                        new Strip("", List.of(), List.of()),
                        List.of(),
                        Optional.empty(),
                        List.of()));
    return Answer.page(pages.fill("zones.jte", view));
  }

  private ZonesView view(
      Frame frame, List<Link> kinds, Leaf leaf, KindOutcome kind, Optional<Double> hz) {
    List<MarkedBand> bands = kind.transfer().bands();
    return new ZonesView(
        frame,
        kind.kind(),
        kinds,
        Strips.over(kind.paired().grid())
            .bands("Marks band by band; each leads to its reasons", bands, b -> path(kind, b)),
        kind.zones().stream().map(z -> zone(leaf, kind, z)).toList(),
        hz.flatMap(f -> position(bands, f)).map(b -> band(leaf, kind, b)),
        drawings.budget(leaf, kind));
  }

  private static Optional<Integer> position(List<MarkedBand> bands, double hz) {
    return IntStream.range(0, bands.size())
        .boxed()
        .filter(b -> bands.get(b).band().lowerHz() <= hz && hz < bands.get(b).band().upperHz())
        .findFirst();
  }

  private static ZonesView.Zone zone(Leaf leaf, KindOutcome kind, Zone zone) {
    MarkedBand worst =
        kind.transfer().bands().stream()
            .filter(b -> b.band().midHz() > zone.fromHz() && b.band().midHz() < zone.toHz())
            .max(Comparator.comparing(MarkedBand::mark).thenComparing(ZonesPages::halfDb))
            .orElseThrow();
    List<String> why = new ArrayList<>();
    for (Reason reason : zone.reasons()) {
      why.add(
          reason == Reason.DECLARED_ZONE
              ? "the lab declared: " + declared(leaf, zone.fromHz(), zone.toHz())
              : reason.plain());
    }
    return new ZonesView.Zone(
        new Link(
            Numbers.hertz(zone.fromHz()) + " to " + Numbers.hertz(zone.toHz()), path(kind, worst)),
        Numbers.fixed(zone.octaves(), 2),
        zone.empty() ? Swatch.GAP : Swatch.of(zone.mark()),
        why.isEmpty()
            ? "the prediction interval is within the reliable tolerance"
            : String.join("; ", why));
  }

  private static double halfDb(MarkedBand band) {
    return band.outcome() instanceof BandOutcome.Fitted fitted ? fitted.prediction().halfDb() : 0;
  }

  private static String declared(Leaf leaf, double fromHz, double toHz) {
    return String.join(
        ", ",
        leaf.study().settings().zones().stream()
            .filter(d -> d.fromHz() < toHz && d.toHz() > fromHz)
            .map(DeclaredZone::name)
            .toList());
  }

  private static ZonesView.Band band(Leaf leaf, KindOutcome kind, int b) {
    List<MarkedBand> bands = kind.transfer().bands();
    MarkedBand marked = bands.get(b);
    String word = marked.empty() ? "no data" : marked.mark().word();
    return new ZonesView.Band(
        Numbers.hertz(marked.band().midHz()) + ": " + word,
        marked.empty() ? Swatch.GAP : Swatch.of(marked.mark()),
        sentences(leaf, marked),
        units(kind, b),
        budget(kind, marked),
        b == 0 ? Optional.empty() : Optional.of(link(kind, bands.get(b - 1))),
        b + 1 == bands.size() ? Optional.empty() : Optional.of(link(kind, bands.get(b + 1))));
  }

  private static List<String> sentences(Leaf leaf, MarkedBand marked) {
    List<String> sentences = new ArrayList<>();
    double hz = marked.band().midHz();
    var tolerance = leaf.study().settings().tolerance();
    if (marked.outcome() instanceof BandOutcome.Fitted f) {
      sentences.add(
          "New minus old is on average "
              + Numbers.fixed(f.mean().meanDb(), 2)
              + " dB ("
              + Numbers.fixed(f.mean().lowDb(), 2)
              + " to "
              + Numbers.fixed(f.mean().highDb(), 2)
              + " dB) for "
              + Numbers.count(f.units(), "unit", "units")
              + "; units scatter by "
              + Numbers.fixed(Math.sqrt(f.mean().tauSquared()), 2)
              + " dB around it.");
      sentences.add(
          "A single unit is predicted within ±"
              + Numbers.fixed(f.prediction().halfDb(), 2)
              + " dB; reliable asks for at most "
              + Numbers.fixed(tolerance.reliable().atHz(hz), 2)
              + " dB, caution for at most "
              + Numbers.fixed(tolerance.caution().atHz(hz), 2)
              + " dB.");
      sentences.add(model(f.prediction()));
    } else {
      sentences.add(
          "There is no estimate: "
              + Numbers.count(marked.outcome().units(), "unit has", "units have")
              + " a level on both fixtures here, and three are needed.");
    }
    for (Reason reason : marked.reasons()) {
      sentences.add(
          "Marked because "
              + (reason == Reason.DECLARED_ZONE
                  ? "the lab declared: "
                      + declared(leaf, marked.band().lowerHz(), marked.band().upperHz())
                  : reason.plain())
              + ".");
    }
    return sentences;
  }

  private static String model(BandOutcome.Prediction p) {
    String errors =
        "; left-out units were missed by "
            + Numbers.fixed(p.looRmsDb(), 2)
            + " dB RMS, by the offset alone "
            + Numbers.fixed(p.looRmsOffsetDb(), 2)
            + " dB.";
    return p.window()
        .map(
            w ->
                "Predicted by the offset and a window of ±"
                    + Numbers.fixed(w.halfOctaves(), 2)
                    + " octaves of the old graph"
                    + errors)
        .orElse("Predicted by the offset, the mean transfer of the kind" + errors);
  }

  private static List<ZonesView.UnitRow> units(KindOutcome kind, int b) {
    BandSample sample = kind.paired().at(b);
    double mean =
        kind.transfer().bands().get(b).outcome() instanceof BandOutcome.Fitted f
            ? f.mean().meanDb()
            : 0;
    boolean fitted = kind.transfer().bands().get(b).outcome() instanceof BandOutcome.Fitted;
    List<ZonesView.UnitRow> rows = new ArrayList<>();
    int[] members = sample.members();
    double[] differences = sample.differencesDb();
    for (int k = 0; k < members.length; k++) {
      int i = members[k];
      String unit = kind.paired().units().get(i);
      rows.add(
          new ZonesView.UnitRow(
              new Link(unit, "/unit?name=" + Pages.query(unit)),
              Numbers.fixed(kind.paired().from().means().get(i).db(b), 2),
              Numbers.fixed(kind.paired().to().means().get(i).db(b), 2),
              Numbers.fixed(differences[k], 2),
              fitted ? Numbers.fixed(differences[k] - mean, 2) : "",
              kind.paired().from().seatings().get(i).get(b)
                  + " and "
                  + kind.paired().to().seatings().get(i).get(b)));
    }
    return rows;
  }

  private static List<ZonesView.BudgetRow> budget(KindOutcome kind, MarkedBand marked) {
    Optional<BandBudget> found =
        kind.budget().bands().stream().filter(x -> x.band().equals(marked.band())).findFirst();
    if (found.isEmpty()) {
      return List.of();
    }
    double all = found.get().known().values().stream().mapToDouble(Contribution::variance).sum();
    List<ZonesView.BudgetRow> rows = new ArrayList<>();
    for (ErrorSource source : ErrorSource.values()) {
      OptionalDouble variance = found.get().variance(source);
      if (variance.isPresent()) {
        rows.add(
            new ZonesView.BudgetRow(
                source.word(),
                Numbers.fixed(Math.sqrt(variance.getAsDouble()), 2),
                all == 0 ? "0" : Numbers.fixed(100 * variance.getAsDouble() / all, 0)));
      }
    }
    return rows;
  }

  private static Link link(KindOutcome kind, MarkedBand band) {
    return new Link(Numbers.hertz(band.band().midHz()), path(kind, band));
  }

  private static String path(String kind) {
    return "/zones?kind=" + Pages.query(kind);
  }

  private static String path(KindOutcome kind, MarkedBand band) {
    return path(kind.kind()) + "&hz=" + Numbers.fixed(band.band().midHz(), 3) + "#band";
  }
}
