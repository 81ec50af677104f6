package org.twinrig.report.figure;

import java.util.List;
import java.util.stream.Stream;

/**
 * The drawings of what supports a study.
 *
 * @param calibration stated against reached coverage, one per kind with enough units
 * @param ranks whether units keep their rank, one per kind that could be ranked
 * @param resonances where resonances sit on either fixture, one per kind that shows some
 * @param features what units share, one per kind
 */
public record EvidenceDrawings(
    List<Figure> calibration, List<Figure> ranks, List<Figure> resonances, List<Figure> features) {

  /** Copies the lists. */
  public EvidenceDrawings {
    calibration = List.copyOf(calibration);
    ranks = List.copyOf(ranks);
    resonances = List.copyOf(resonances);
    features = List.copyOf(features);
  }

  List<Figure> all() {
    return Stream.of(calibration, ranks, resonances, features).flatMap(List::stream).toList();
  }
}
