package org.twinrig.study;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Side;
import org.twinrig.capture.Unit;
import org.twinrig.problem.Problem;

/** Notes on the units that take no part in a study, or not with the same sides. */
final class Participation {
  private final String source;
  private final List<String> fixtures;
  private final List<CaptureEntry> captures;

  /**
   * A judge of units.
   *
   * @param source the table of units
   * @param fixtures the names of the two fixtures
   */
  Participation(String source, List<String> fixtures, List<CaptureEntry> captures) {
    this.source = source;
    this.fixtures = fixtures;
    this.captures = captures;
  }

  List<Problem> notes(List<Unit> units) {
    return units.stream()
        .flatMap(unit -> note(unit).map(text -> Problem.note(source, unit.line(), text)).stream())
        .toList();
  }

  private Optional<String> note(Unit unit) {
    String name = "unit `" + unit.name() + "` ";
    List<CaptureEntry> own =
        captures.stream().filter(entry -> entry.unit().equals(unit.name())).toList();
    if (own.isEmpty()) {
      return Optional.of(name + "has no usable capture and takes no part");
    }
    for (String fixture : fixtures) {
      List<CaptureEntry> there = own.stream().filter(e -> e.fixture().equals(fixture)).toList();
      if (there.isEmpty()) {
        return Optional.of(name + "has no usable capture on `" + fixture + "` and takes no part");
      }
      if (there.stream().allMatch(CaptureEntry::excludedByLab)) {
        return Optional.of(
            name + "has all its captures on `" + fixture + "` excluded and takes no part");
      }
    }
    return sides(name, own);
  }

  private Optional<String> sides(String name, List<CaptureEntry> own) {
    Set<Side> before = sides(own, fixtures.get(0));
    Set<Side> after = sides(own, fixtures.get(1));
    return before.equals(after)
        ? Optional.empty()
        : Optional.of(
            name
                + Stream.of(on(before, fixtures.get(0)), on(after, fixtures.get(1)))
                    .collect(Collectors.joining(" and ", "was captured on ", ""))
                + ": its averages are over different sides");
  }

  private static Set<Side> sides(List<CaptureEntry> own, String fixture) {
    return own.stream()
        .filter(entry -> entry.fixture().equals(fixture) && !entry.excludedByLab())
        .map(CaptureEntry::side)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static String on(Set<Side> sides, String fixture) {
    String which = sides.stream().map(Side::name).collect(Collectors.joining("+"));
    return "side " + which + " of `" + fixture + "`";
  }
}
