package org.twinrig.workbench;

import java.util.List;
import java.util.Optional;
import org.twinrig.internal.Spreadsheet;
import org.twinrig.problem.UnusableInput;

/** Answers doubts about the study in its tables, and opens them again. */
public record DoubtPages(Pages pages) {
  private static final int LONGEST_REASON = 300;

  Response answer(Request request) throws Exception {
    return change(request, answer(reason(request)));
  }

  Response openAgain(Request request) throws Exception {
    return change(request, "");
  }

  private Response change(Request request, String reason) throws Exception {
    long revision = request.number("state");
    Snapshot snapshot = pages.session.at(revision);
    Cause cause = named(snapshot.causes(), request);
    pages.session.answer(revision, cause.chosen(request), reason);
    return Pages.back(request, "./");
  }

  /** The cause that a form names. */
  static Cause named(List<Cause> causes, Request request) throws UnusableInput {
    long number = request.number("cause");
    if (number >= causes.size()) {
      throw Request.unusable("there is no such doubt", "open the page again");
    }
    return causes.get((int) number);
  }

  /** The reason that a form gives. */
  static String reason(Request request) throws UnusableInput {
    String reason = request.text("reason").replaceAll("\\s+", " ");
    Optional<String> amiss = amiss(reason);
    if (amiss.isPresent()) {
      throw refused(amiss.get());
    }
    return reason;
  }

  /** A reason as a cell that may hold several can hold it. */
  static String answer(String reason) throws UnusableInput {
    if (reason.indexOf(';') >= 0) {
      throw refused("holds a `;`, which stands between the answers to several doubts");
    }
    return reason;
  }

  private static UnusableInput refused(String amiss) {
    return UnusableInput.fatal("the reason", 0, amiss, "go back and write it in other words");
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
}
