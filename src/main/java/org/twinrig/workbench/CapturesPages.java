package org.twinrig.workbench;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.twinrig.capture.Unit;
import org.twinrig.problem.UnusableInput;

/** The units of the study, and a page per unit with its captures as entries. */
public record CapturesPages(Pages pages, FigureCache figures) {
  private static final int ENTRIES_SHOWN = 30;

  Response contents(Request request) throws IOException {
    Frame frame = pages.frame(Frame.Part.CAPTURES, "Captures", "./");
    ScreenedCaptures screened = new ScreenedCaptures(frame.snapshot());
    List<StudySession.Entry> all = pages.session.entries();
    var entries = all.subList(Math.max(0, all.size() - ENTRIES_SHOWN), all.size());
    return Pages.fill(
        "contents.jte", Map.of("frame", frame, "screened", screened, "entries", entries));
  }

  Response unit(Request request) throws IOException, UnusableInput {
    String name = request.text("name");
    Frame frame = pages.frame(Frame.Part.CAPTURES, name, Pages.unit(name));
    ScreenedCaptures screened = new ScreenedCaptures(frame.snapshot());
    int at = frame.snapshot().study().units().stream().map(Unit::name).toList().indexOf(name);
    if (at < 0) {
      throw Request.unusable("the study has no unit of this name", "go to the captures");
    }
    return Pages.fill(
        "unit.jte", Map.of("frame", frame, "at", at, "screened", screened, "figures", figures));
  }

  Response leaveOut(Request request) throws Exception {
    return change(request, DoubtPages.reason(request));
  }

  Response takeBack(Request request) throws Exception {
    return change(request, "");
  }

  private Response change(Request request, String reason) throws Exception {
    pages.session.exclude(request.number("revision"), line(request), request.text("unit"), reason);
    return entry(request);
  }

  Response confirm(Request request) throws Exception {
    return confirm(request, DoubtPages.answer(DoubtPages.reason(request)));
  }

  Response doubtAgain(Request request) throws Exception {
    return confirm(request, "");
  }

  private Response confirm(Request request, String reason) throws Exception {
    pages.session.confirm(request.number("revision"), line(request), request.text("unit"), reason);
    return entry(request);
  }

  private static int line(Request request) throws UnusableInput {
    return (int) Math.min(Integer.MAX_VALUE, request.number("line"));
  }

  private static Response entry(Request request) throws UnusableInput {
    return Response.seeOther(Pages.unit(request.text("unit")) + "#entry-" + line(request));
  }

  /** Why a unit does not enter the fit; empty when it does. */
  public static String role(Unit unit) {
    return switch (unit.role()) {
      case FIT -> "";
      case HOLDOUT -> "held out of the fit";
      case CHECK -> "check unit, not in the fit";
    };
  }
}
