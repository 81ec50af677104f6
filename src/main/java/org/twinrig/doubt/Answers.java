package org.twinrig.doubt;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Session;
import org.twinrig.capture.Unit;
import org.twinrig.study.Study;

/**
 * What a lab answers to doubts, in the column {@code confirmed} of its tables.
 *
 * <p>A cell holds a reason in words, which answers every doubt about its row; or, so that a doubt
 * found later stays open, reasons by name, joined by semicolons: {@code departs from its kind: worn
 * pads, as sold; kind doubtful: semi-open by design}. Doubts about a study or a catalogue as a
 * whole have no row, and are not answered but mended.
 */
public final class Answers {
  private Answers() {}

  /** What a cell answers to a doubt; empty where it does not. */
  public static String to(String doubt, String cell) {
    List<String> named = new ArrayList<>();
    boolean byName = false;
    for (String part : cell.split(";")) {
      int colon = part.indexOf(':');
      String name = colon < 0 ? "" : part.substring(0, colon).strip();
      byName |= NAMED.contains(name);
      if (name.equals(doubt)) {
        named.add(part.substring(colon + 1).strip());
      }
    }
    return byName ? String.join("; ", named) : cell.strip();
  }

  /** A study's doubts with what its tables answer: a pair's in the row of either unit. */
  public static List<Doubt> of(Study study, List<Doubt> doubts) {
    return doubts.stream().map(d -> d.answered(answer(study, d))).toList();
  }

  private static String answer(Study study, Doubt doubt) {
    return cells(study, doubt)
        .map(cell -> to(doubt.doubt(), cell))
        .filter(reason -> !reason.isEmpty())
        .findFirst()
        .orElse("");
  }

  private static Stream<String> cells(Study study, Doubt doubt) {
    return switch (doubt.subject()) {
      case CAPTURE ->
          study.captures().stream()
              .filter(c -> c.file().equals(doubt.file()))
              .map(CaptureEntry::confirmed);
      case UNIT, PAIR -> {
        List<String> units = List.of(doubt.name().split(" / "));
        yield study.units().stream()
            .filter(u -> u.name().equals(doubt.name()) || units.contains(u.name()))
            .map(Unit::confirmed);
      }
      case SESSION ->
          study.sessions().stream()
              .filter(s -> s.name().equals(doubt.name()))
              .map(Session::confirmed);
      case STUDY, GRAPH, CATALOGUE -> Stream.empty();
    };
  }

  /** The doubts that can be answered, by the words that name them. */
  private static final List<String> NAMED =
      List.of(
          SpecimenChanged.DOUBT,
          UnitsExchanged.DOUBT,
          OneUnitTwice.DOUBT,
          FixturesExchanged.DOUBT,
          KindDoubtful.DOUBT,
          "already measured",
          "same as",
          "tables contradict");
}
