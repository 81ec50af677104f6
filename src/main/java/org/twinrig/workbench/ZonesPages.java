package org.twinrig.workbench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.internal.Numbers;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Reason;
import org.twinrig.reliability.Zone;
import org.twinrig.report.html.Swatch;
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
    Frame frame = pages.frame(book, leaf, Frame.Part.ZONES, "Zones", "./zones");
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
        hz.flatMap(f -> position(bands, f)).map(b -> BandReasons.of(leaf, kind, b)),
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

  static String declared(Leaf leaf, double fromHz, double toHz) {
    return String.join(
        ", ",
        leaf.study().settings().zones().stream()
            .filter(d -> d.fromHz() < toHz && d.toHz() > fromHz)
            .map(DeclaredZone::name)
            .toList());
  }

  static Link link(KindOutcome kind, MarkedBand band) {
    return new Link(Numbers.hertz(band.band().midHz()), path(kind, band));
  }

  private static String path(String kind) {
    return "./zones?kind=" + Pages.query(kind);
  }

  private static String path(KindOutcome kind, MarkedBand band) {
    return path(kind.kind()) + "&hz=" + Numbers.fixed(band.band().midHz(), 3) + "#band";
  }
}
