package org.twinrig.workbench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Spreadsheet;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.screening.Verdict;
import org.twinrig.workbench.view.ContentsView;
import org.twinrig.workbench.view.Frame;
import org.twinrig.workbench.view.Link;
import org.twinrig.workbench.view.UnitView;

/** The contents of the book, and a page per unit with its captures as entries. */
final class CapturesPages {
  private static final int LONGEST_REASON = 300;
  private static final int ENTRIES_SHOWN = 30;

  private final Book book;
  private final Pages pages;
  private final Drawings drawings;

  CapturesPages(Book book, Pages pages, Drawings drawings) {
    this.book = book;
    this.pages = pages;
    this.drawings = drawings;
  }

  Answer contents(Ask ask) throws IOException {
    Leaf leaf = book.leaf();
    Doubts doubts = Doubts.of(leaf);
    Map<String, List<ContentsView.Row>> kinds = new LinkedHashMap<>();
    for (Unit unit : leaf.study().units()) {
      kinds.computeIfAbsent(unit.kind(), k -> new ArrayList<>()).add(row(leaf, unit, doubts));
    }
    List<ContentsView.Entry> entries =
        book.entries().stream().map(e -> new ContentsView.Entry(e.revision(), e.what())).toList();
    return Answer.page(
        pages.fill(
            "contents.jte",
            new ContentsView(
                pages.frame(book, leaf, Frame.Part.CAPTURES, "Captures", "./"),
                doubts.sentence(),
                doubts.units(),
                doubts.ruled(),
                kinds.entrySet().stream()
                    .map(e -> new ContentsView.Kind(e.getKey(), e.getValue()))
                    .toList(),
                leaf.problems().stream().map(Problem::text).toList(),
                entries.subList(Math.max(0, entries.size() - ENTRIES_SHOWN), entries.size()))));
  }

  private static ContentsView.Row row(Leaf leaf, Unit unit, Doubts doubts) {
    List<CaptureEntry> own =
        leaf.study().captures().stream().filter(c -> c.unit().equals(unit.name())).toList();
    String from = leaf.study().from().name();
    return new ContentsView.Row(
        link(unit),
        role(unit),
        own.stream().filter(c -> c.fixture().equals(from)).count(),
        own.stream().filter(c -> !c.fixture().equals(from)).count(),
        doubts.count(unit),
        own.stream().filter(doubts::leftOut).count());
  }

  Answer unit(Ask ask) throws IOException, UnusableInput {
    Leaf leaf = book.leaf();
    List<Unit> units = leaf.study().units();
    int at = position(units, ask.text("name"));
    Unit unit = units.get(at);
    Doubts doubts = Doubts.of(leaf);
    List<UnitView.OnFixture> fixtures = new ArrayList<>();
    for (Fixture fixture : List.of(leaf.study().from(), leaf.study().to())) {
      fixtures.add(onFixture(leaf, unit, fixture, doubts));
    }
    return Answer.page(
        pages.fill(
            "unit.jte",
            new UnitView(
                pages.frame(book, leaf, Frame.Part.CAPTURES, unit.name(), link(unit).path()),
                unit.name(),
                about(unit),
                at == 0 ? Optional.empty() : Optional.of(link(units.get(at - 1))),
                at + 1 == units.size() ? Optional.empty() : Optional.of(link(units.get(at + 1))),
                doubts.list(leaf, unit),
                doubts.before(at),
                doubts.after(at),
                drawings.captures(leaf, unit),
                fixtures,
                margin(leaf, unit))));
  }

  private static UnitView.OnFixture onFixture(
      Leaf leaf, Unit unit, Fixture fixture, Doubts doubts) {
    Optional<Sketches> sketches = leaf.outcome().map(o -> Sketches.of(o, unit.name(), fixture));
    return new UnitView.OnFixture(
        fixture.label(),
        sketches.map(Sketches::all).orElse(""),
        leaf.study().captures().stream()
            .filter(c -> c.unit().equals(unit.name()))
            .filter(c -> c.fixture().equals(fixture.name()))
            .map(c -> entry(c, doubts, sketches.map(s -> s.one(c.line())).orElse("")))
            .toList());
  }

  Answer leaveOut(Ask ask) throws Exception {
    String reason = ask.text("reason").replaceAll("\\s+", " ");
    Optional<String> amiss = amiss(reason);
    if (amiss.isPresent()) {
      throw new UnusableInput(
          Problem.fatal("the reason", 0, amiss.get(), "go back and write it in other words"));
    }
    return change(ask, reason);
  }

  Answer takeBack(Ask ask) throws Exception {
    return change(ask, "");
  }

  private Answer change(Ask ask, String reason) throws Exception {
    int line = (int) Math.min(Integer.MAX_VALUE, ask.number("line"));
    book.exclude(ask.number("revision"), line, ask.text("unit"), reason);
    return Answer.seeOther("./unit?name=" + Pages.query(ask.text("unit")) + "#entry-" + line);
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

  private static int position(List<Unit> units, String name) throws UnusableInput {
    for (int k = 0; k < units.size(); k++) {
      if (units.get(k).name().equals(name)) {
        return k;
      }
    }
    throw new UnusableInput(
        Problem.fatal("the page", 0, "the study has no unit of this name", "go to the captures"));
  }

  /** How a capture is called among those of its unit and fixture. */
  static String title(CaptureEntry c) {
    String side =
        switch (c.side()) {
          case L -> ", left";
          case R -> ", right";
          case M -> "";
        };
    return "Seating " + c.seating() + side;
  }

  private static UnitView.Entry entry(CaptureEntry c, Doubts doubts, String sketch) {
    String state =
        c.excludedByLab()
            ? "left out: " + c.exclude()
            : doubts.leftOutByRule(c) ? "left out by a rule" : "counts";
    return new UnitView.Entry(
        c.line(),
        title(c),
        c.file() + (c.session().isBlank() ? "" : ", session " + c.session()),
        c.note(),
        state,
        doubts.of(c).stream().map(Verdict::sentence).toList(),
        c.excludedByLab(),
        sketch);
  }

  private static List<String> margin(Leaf leaf, Unit unit) {
    return leaf.outcome().stream()
        .flatMap(o -> o.screening().kinds().stream())
        .flatMap(k -> k.verdicts().stream())
        .filter(v -> v.unit().equals(unit.name()))
        .map(v -> v.sentence())
        .toList();
  }

  private static List<String> about(Unit unit) {
    List<String> about = new ArrayList<>(List.of(unit.kind()));
    if (!role(unit).isEmpty()) {
      about.add(role(unit));
    }
    if (!unit.pads().isBlank()) {
      about.add("pads: " + unit.pads());
    }
    if (!unit.note().isBlank()) {
      about.add(unit.note());
    }
    return about;
  }

  private static String role(Unit unit) {
    return switch (unit.role()) {
      case FIT -> "";
      case HOLDOUT -> "held out of the fit";
      case CHECK -> "check unit, not in the fit";
    };
  }

  static Link link(Unit unit) {
    return new Link(unit.name(), "./unit?name=" + Pages.query(unit.name()));
  }
}
