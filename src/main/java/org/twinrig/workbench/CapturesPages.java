package org.twinrig.workbench;

import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Spreadsheet;
import org.twinrig.problem.UnusableInput;

/** The units of the study, and a page per unit with its captures as entries. */
public record CapturesPages(Pages pages, FigureCache figures) {
  private static final int LONGEST_REASON = 300;
  private static final int ENTRIES_SHOWN = 30;

  Response contents(Request request) throws IOException {
    Frame frame = pages.frame(Frame.Part.CAPTURES, "Captures", "./");
    Doubts doubts = new Doubts(frame.snapshot());
    List<StudySession.Entry> all = pages.session.entries();
    var entries = all.subList(Math.max(0, all.size() - ENTRIES_SHOWN), all.size());
    return Pages.fill("contents.jte", Map.of("frame", frame, "doubts", doubts, "entries", entries));
  }

  Response unit(Request request) throws IOException, UnusableInput {
    String name = request.text("name");
    Frame frame = pages.frame(Frame.Part.CAPTURES, name, Pages.unit(name));
    Doubts doubts = new Doubts(frame.snapshot());
    int at = frame.snapshot().study().units().stream().map(Unit::name).toList().indexOf(name);
    if (at < 0) {
      throw Request.unusable("the study has no unit of this name", "go to the captures");
    }
    return Pages.fill(
        "unit.jte", Map.of("frame", frame, "at", at, "doubts", doubts, "figures", figures));
  }

  Response leaveOut(Request request) throws Exception {
    String reason = request.text("reason").replaceAll("\\s+", " ");
    Optional<String> amiss = amiss(reason);
    if (amiss.isPresent()) {
      throw UnusableInput.fatal(
          "the reason", 0, amiss.get(), "go back and write it in other words");
    }
    return change(request, reason);
  }

  Response takeBack(Request request) throws Exception {
    return change(request, "");
  }

  private Response change(Request request, String reason) throws Exception {
    int line = (int) Math.min(Integer.MAX_VALUE, request.number("line"));
    pages.session.exclude(request.number("revision"), line, request.text("unit"), reason);
    return Response.seeOther(Pages.unit(request.text("unit")) + "#entry-" + line);
  }

  private static Optional<String> amiss(String reason) {
    if (reason.isEmpty()) {
      return Optional.of("is empty: whoever reads the table later must know why");
    }
    if (reason.length() > LONGEST_REASON) {
      return Optional.of("is longer than " + LONGEST_REASON + " letters");
    }
    if (Spreadsheet.runsAsFormula(reason)) {
      return Optional.of(
          "begins with `" + reason.charAt(0) + "`, and a spreadsheet would take it for a formula");
    }
    boolean strange = reason.chars().anyMatch(c -> Character.isISOControl(c) || c == 0xFFFE);
    return strange ? Optional.of("holds a letter that cannot be printed") : Optional.empty();
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
