package org.twinrig.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Capture;
import org.twinrig.capture.Unit;
import org.twinrig.evidence.Equivalence;
import org.twinrig.evidence.ErrorBudget;
import org.twinrig.evidence.HeldOutUnits;
import org.twinrig.evidence.Repeatability;
import org.twinrig.evidence.SeatingsNeeded;
import org.twinrig.evidence.Trial;
import org.twinrig.evidence.Validation;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.regression.KindEstimate;
import org.twinrig.regression.TransferEstimator;
import org.twinrig.reliability.FixtureFeatures;
import org.twinrig.reliability.MarkRule;
import org.twinrig.reliability.MarkStability;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.Resonance;
import org.twinrig.reliability.ResonanceWander;
import org.twinrig.reliability.Zone;
import org.twinrig.screening.Screening;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Anchoring;
import org.twinrig.study.FrequencyRange;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.study.SessionCorrection;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;
import org.twinrig.translation.TransferFunction;

/** Walks a study from its captures to its marked transfer. */
public final class Analysis {
  /** Resonances are looked for on this grid. */
  private static final int RESONANCE_BANDS_PER_OCTAVE = 48;

  private final Study study;
  private final int threads;

  private Analysis(Study study, int threads) {
    this.study = study;
    this.threads = threads;
  }

  /**
   * Analyses a study.
   *
   * @param study what the lab declared
   * @param captures its captures as read
   * @param fingerprint of its inputs
   * @param threads how many threads to work on; the outcome does not depend on it
   * @return what was found
   * @throws UnusableInput when no kind has a unit on both fixtures
   */
  public static StudyOutcome of(
      Study study, List<Capture> captures, String fingerprint, int threads) throws UnusableInput {
    return new Analysis(study, threads).run(captures, fingerprint);
  }

  private StudyOutcome run(List<Capture> read, String fingerprint) throws UnusableInput {
    List<Capture> corrected = SessionCorrection.apply(read, study);
    Anchoring anchoring = Anchoring.of(study.settings(), threads);
    Findings<List<AnchoredCapture>> anchored = anchoring.apply(corrected);
    Screening screening = Screening.of(study, anchored.value());
    List<PairedUnits> paired = new Pairing(study).pair(screening.accepted(), Unit.Role.FIT);
    if (paired.isEmpty()) {
      List<Problem> problems = new ArrayList<>(anchored.problems());
      problems.add(
          Problem.fatal(
              "study.yaml",
              0,
              "no unit has an accepted capture on both fixtures",
              "capture at least " + study.settings().minUnits() + " units of a kind on both"));
      throw new UnusableInput(problems);
    }
    Map<String, PairedUnits> fine = fine(anchoring, screening.accepted());
    Map<String, PairedUnits> heldOut =
        byKind(new Pairing(study).pair(screening.accepted(), Unit.Role.HOLDOUT));
    List<KindOutcome> kinds =
        paired.stream()
            .map(
                p ->
                    outcome(
                        p,
                        Optional.ofNullable(fine.get(p.kind())),
                        Optional.ofNullable(heldOut.get(p.kind()))))
            .toList();
    return new StudyOutcome(
        study, fingerprint, anchored.value(), screening, kinds, anchored.problems());
  }

  private KindOutcome outcome(
      PairedUnits paired, Optional<PairedUnits> fine, Optional<PairedUnits> heldOut) {
    Settings settings = study.settings();
    KindEstimate estimate =
        TransferEstimator.withDefaults()
            .withConfidence(settings.confidence())
            .withSeed(settings.seed())
            .withModel(settings.model())
            .withThreads(threads)
            .fit(paired);
    List<ResonanceWander> wanders = fine.map(this::wanders).orElse(List.of());
    List<ResonanceWander.Range> wandering =
        wanders.stream().flatMap(w -> w.zone().stream()).toList();
    MarkRule rule = new MarkRule(settings, List.of(study.from(), study.to()), wandering);
    List<MarkedBand> marked = rule.mark(estimate.bands());
    TransferFunction transfer =
        new TransferFunction(paired.kind(), paired.units().size(), paired.grid(), marked);
    List<Trial> unseen = heldOut.map(h -> heldOut(transfer, estimate).judge(h)).orElse(List.of());
    KindEvidence evidence = evidence(paired, estimate, unseen);
    return new KindOutcome(
        paired,
        estimate,
        transfer,
        Zone.of(marked),
        wanders,
        evidence.leftOut().regions(),
        MarkStability.withDefaults()
            .withConfidence(settings.confidence())
            .withSeed(settings.seed())
            .of(estimate, rule, wanders),
        ErrorBudget.of(paired, estimate, settings),
        Repeatability.of(paired, settings.confidence()),
        SeatingsNeeded.of(paired, estimate, settings.confidence()),
        evidence);
  }

  /** Reference curves are not declared yet, so that nothing is ranked. */
  private KindEvidence evidence(PairedUnits paired, KindEstimate estimate, List<Trial> heldOut) {
    Settings settings = study.settings();
    double confidence = settings.confidence();
    return new KindEvidence(
        Equivalence.of(estimate, settings.tolerance().equivalenceDb(), confidence),
        Validation.of(paired.grid(), Trial.leftOut(estimate), confidence),
        Validation.of(paired.grid(), heldOut, confidence),
        Optional.empty(),
        FixtureFeatures.withDefaults()
            .withConfidence(confidence)
            .withSeed(settings.seed())
            .withThreads(threads)
            .of(paired));
  }

  /** The accepted captures on the fine grid of the search range, paired like the coarse ones. */
  private Map<String, PairedUnits> fine(Anchoring anchoring, List<AnchoredCapture> accepted) {
    FrequencyRange search = study.settings().resonanceSearch();
    BandGrid grid = BandGrid.covering(search.fromHz(), search.toHz(), RESONANCE_BANDS_PER_OCTAVE);
    List<AnchoredCapture> fine = anchoring.onto(grid).reband(accepted);
    return byKind(new Pairing(study).pair(fine, Unit.Role.FIT));
  }

  private static Map<String, PairedUnits> byKind(List<PairedUnits> paired) {
    return paired.stream().collect(Collectors.toMap(PairedUnits::kind, Function.identity()));
  }

  private HeldOutUnits heldOut(TransferFunction transfer, KindEstimate estimate) {
    return new HeldOutUnits(StudyOutcome.translation(study, "", List.of(transfer)), estimate);
  }

  private List<ResonanceWander> wanders(PairedUnits fine) {
    Settings settings = study.settings();
    double least = settings.tolerance().reliable().smallestDb();
    List<ResonanceWander> found = new ArrayList<>();
    for (Resonance.Shape shape : Resonance.Shape.values()) {
      ResonanceWander.of(fine, shape, least, settings.confidence()).ifPresent(found::add);
    }
    return found;
  }
}
