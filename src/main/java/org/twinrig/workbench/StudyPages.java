package org.twinrig.workbench;

import java.io.IOException;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.regression.BandOutcome;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Zone;
import org.twinrig.report.StudyRun;

/** How the study stands and why, what the last change did, and the way back. */
public record StudyPages(Pages pages, FigureCache figures) {

  Response study(Request request) throws IOException {
    Frame frame = pages.frame(Frame.Part.STUDY, "The study", "./study");
    List<String> sentences = frame.snapshot().outcome().map(StudyRun::sentences).orElse(List.of());
    return Pages.fill(
        "study.jte", Map.of("frame", frame, "sentences", sentences, "figures", figures));
  }

  Response undo(Request request) throws Exception {
    pages.session.undo(request.number("revision"));
    return Pages.back(request, "./");
  }

  Response reload(Request request) throws Exception {
    pages.session.reload();
    return Response.seeOther("./");
  }

  /** Why bands and zones are marked: units, their differences, the model, the error budget. */
  Response zones(Request request) throws IOException {
    Frame frame = pages.frame(Frame.Part.ZONES, "Zones", "./zones");
    List<KindOutcome> kinds = frame.snapshot().kinds();
    Map<String, Object> shown = new HashMap<>();
    shown.put("frame", frame);
    shown.put("figures", figures);
    if (!kinds.isEmpty()) {
      KindOutcome kind =
          kinds.stream()
              .filter(k -> k.kind().equals(request.text("kind")))
              .findFirst()
              .orElse(kinds.get(0));
      shown.put("kind", kind);
      request.hertz("hz").ifPresent(hz -> shown.put("chosen", position(kind, hz)));
    }
    return Pages.fill("zones.jte", shown);
  }

  /** The band a frequency lies in; -1 when it lies in none. */
  private static int position(KindOutcome kind, double hz) {
    List<MarkedBand> bands = kind.transfer().bands();
    return IntStream.range(0, bands.size())
        .filter(b -> bands.get(b).band().lowerHz() <= hz && hz < bands.get(b).band().upperHz())
        .findFirst()
        .orElse(-1);
  }

  /** The band of a zone that is marked worst, and of those the one predicted least closely. */
  public static MarkedBand worst(KindOutcome kind, Zone zone) {
    return kind.transfer().bands().stream()
        .filter(b -> b.band().midHz() > zone.fromHz() && b.band().midHz() < zone.toHz())
        .max(Comparator.comparing(MarkedBand::mark).thenComparing(StudyPages::halfDb))
        .orElseThrow();
  }

  private static double halfDb(MarkedBand band) {
    return band.outcome() instanceof BandOutcome.Fitted fitted ? fitted.prediction().halfDb() : 0;
  }
}
