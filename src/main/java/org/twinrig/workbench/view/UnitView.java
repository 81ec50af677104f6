package org.twinrig.workbench.view;

import java.util.List;
import java.util.Optional;
import org.twinrig.report.html.Plate;

/**
 * The page of a unit.
 *
 * @param frame around it
 * @param unit its name
 * @param about its kind, role, pads and note
 * @param doubts its captures in doubt
 * @param doubtBefore the unit in doubt before it, at its first capture in doubt
 * @param doubtAfter the next unit in doubt, likewise
 * @param plates its captures drawn
 * @param fixtures its captures, fixture by fixture
 * @param margin what screening says of the unit as a whole
 */
public record UnitView(
    Frame frame,
    String unit,
    List<String> about,
    Optional<Link> previous,
    Optional<Link> next,
    List<Doubt> doubts,
    Optional<Link> doubtBefore,
    Optional<Link> doubtAfter,
    List<Plate> plates,
    List<OnFixture> fixtures,
    List<String> margin) {

  public UnitView {
    about = List.copyOf(about);
    doubts = List.copyOf(doubts);
    plates = List.copyOf(plates);
    fixtures = List.copyOf(fixtures);
    margin = List.copyOf(margin);
  }

  /**
   * A capture in doubt.
   *
   * @param seating the way to its entry
   * @param findings what screening found, one sentence each
   */
  public record Doubt(Link seating, List<String> findings) {
    public Doubt {
      findings = List.copyOf(findings);
    }
  }

  /**
   * What was captured on a fixture.
   *
   * @param sketch all of its captures as SVG path data, for the margin; empty when none is usable
   * @param entries its captures
   */
  public record OnFixture(String label, String sketch, List<Entry> entries) {
    public OnFixture {
      entries = List.copyOf(entries);
    }
  }

  /**
   * A capture as an entry of the book.
   *
   * @param line of the table
   * @param title seating and side
   * @param where file and session
   * @param note the lab's remark
   * @param state whether it counts, and why not
   * @param findings what screening found, one sentence each
   * @param leftOut whether the lab left it out
   * @param sketch the capture as SVG path data; empty when it could not be used
   */
  public record Entry(
      int line,
      String title,
      String where,
      String note,
      String state,
      List<String> findings,
      boolean leftOut,
      String sketch) {
    public Entry {
      findings = List.copyOf(findings);
    }
  }
}
