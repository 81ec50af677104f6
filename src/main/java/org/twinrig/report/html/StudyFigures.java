package org.twinrig.report.html;

import java.util.List;
import org.twinrig.report.figure.Figure;
import org.twinrig.report.figure.StudyDrawings;

/**
 * The figures of a study's report, one per kind where it applies.
 *
 * @param transfer the mean transfer
 * @param captures the captures of one unit
 * @param errors the leave-one-unit-out errors
 * @param budget where the error comes from
 * @param resonances where resonances sit on either fixture
 * @param sessions the drift charts of the check unit, one per fixture
 * @param repeatability how far seatings scatter
 */
public record StudyFigures(
    List<Figure> transfer,
    List<Figure> captures,
    List<Figure> errors,
    List<Figure> budget,
    List<Figure> resonances,
    List<Figure> sessions,
    List<Figure> repeatability) {

  /** Copies the lists. */
  public StudyFigures {
    transfer = List.copyOf(transfer);
    captures = List.copyOf(captures);
    errors = List.copyOf(errors);
    budget = List.copyOf(budget);
    resonances = List.copyOf(resonances);
    sessions = List.copyOf(sessions);
    repeatability = List.copyOf(repeatability);
  }

  /** What is drawn of a study so far: nothing of its resonances. */
  static StudyFigures of(StudyDrawings drawings) {
    return new StudyFigures(
        drawings.transfer(),
        drawings.captures(),
        drawings.errors(),
        drawings.budget(),
        List.of(),
        drawings.sessions(),
        drawings.repeatability());
  }
}
