package org.twinrig.proof;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.analysis.Analysis;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.band.Band;
import org.twinrig.capture.Unit;
import org.twinrig.evidence.Region;
import org.twinrig.internal.Checks;
import org.twinrig.response.Levels;
import org.twinrig.simulation.SimulatedStudy;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.study.PredictionModel;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;
import org.twinrig.translation.CatalogueEntry;
import org.twinrig.translation.TranslatedBand;
import org.twinrig.translation.Translator;

/**
 * Holds one simulated study against the units it kept out.
 *
 * <p>The study goes the whole way of {@link Analysis}. The old graph of an unseen unit is its mean
 * over its first seatings on the old fixture; re-expressed by {@link Translator}, it is compared
 * with the unit's re-capture on the new fixture, averaged over as many seatings as in the study.
 */
final class UnseenUnits {
  private final Study study;
  private final StudyOutcome outcome;
  private final Translator translator;

  /**
   * One band of one unit that no fit saw.
   *
   * @param kind the unit's kind
   * @param graphSeatings how many seatings its old graph averages
   * @param region where the band lies
   * @param errorDb level of the re-capture minus predicted level, dB
   * @param halfDb half-width of the prediction interval, dB
   */
  record Judgement(String kind, int graphSeatings, Region region, double errorDb, double halfDb) {
    Judgement {
      Checks.finite(errorDb, "an error in dB");
      Checks.notNegative(halfDb, "a prediction half-width in dB");
    }

    boolean inside() {
      return Math.abs(errorDb) <= halfDb;
    }

    /** Whether the re-capture lies below the interval. */
    boolean below() {
      return errorDb < -halfDb;
    }
  }

  private UnseenUnits(Study study, StudyOutcome outcome) {
    this.study = study;
    this.outcome = outcome;
    this.translator = new Translator(outcome.translation());
  }

  /**
   * Analyses a drawn study.
   *
   * @param drawn the study, with units held out
   * @param model how a unit is predicted
   */
  static UnseenUnits of(SimulatedStudy drawn, PredictionModel model) {
    Study study = drawn.declared(Settings.defaults().with(Setting.MODEL, model));
    return new UnseenUnits(study, Harness.analysed(study, drawn.captures()));
  }

  /**
   * Judges every unseen unit at every band that has a prediction.
   *
   * @param graphSeatings how many seatings the old graph averages, and is said to average
   */
  List<Judgement> judge(int graphSeatings) {
    List<AnchoredCapture> seen =
        outcome.screening().accepted().stream().filter(c -> counts(c, graphSeatings)).toList();
    List<Judgement> judgements = new ArrayList<>();
    for (PairedUnits kind : new Pairing(study).pair(seen, Unit.Role.HOLDOUT)) {
      for (int i = 0; i < kind.units().size(); i++) {
        judgements.addAll(judge(kind, i, graphSeatings));
      }
    }
    return judgements;
  }

  private boolean counts(AnchoredCapture c, int graphSeatings) {
    boolean old = c.capture().entry().fixture().equals(study.from().name());
    return !old || c.capture().entry().seating() <= graphSeatings;
  }

  private List<Judgement> judge(PairedUnits kind, int unit, int graphSeatings) {
    CatalogueEntry graph = CatalogueEntry.raw(kind.units().get(unit), kind.kind(), graphSeatings);
    Levels measured = kind.to().means().get(unit);
    List<TranslatedBand> bands =
        translator.applyPinned(graph, kind.from().means().get(unit)).bands();
    List<Judgement> judgements = new ArrayList<>();
    for (int b = 0; b < bands.size(); b++) {
      Optional<Region> region = region(bands.get(b).band());
      Optional<TranslatedBand.Predicted> predicted = bands.get(b).predicted();
      OptionalDouble level = measured.level(b);
      if (region.isPresent() && predicted.isPresent() && level.isPresent()) {
        double errorDb = level.getAsDouble() - predicted.get().toDb();
        double halfDb = predicted.get().halfDb();
        judgements.add(new Judgement(kind.kind(), graphSeatings, region.get(), errorDb, halfDb));
      }
    }
    return judgements;
  }

  /** A band outside every region counts nowhere. */
  private static Optional<Region> region(Band band) {
    return Arrays.stream(Region.values()).filter(r -> r.holds(band)).findFirst();
  }
}
