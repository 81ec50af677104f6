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
import org.twinrig.evidence.ErrorBudget;
import org.twinrig.evidence.RegionErrors;
import org.twinrig.evidence.Repeatability;
import org.twinrig.evidence.SeatingsNeeded;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.regression.KindEstimate;
import org.twinrig.reliability.MarkStability;
import org.twinrig.reliability.Resonance;
import org.twinrig.reliability.ResonanceWander;
import org.twinrig.reliability.Zone;
import org.twinrig.screening.DriftCorrection;
import org.twinrig.screening.Screening;
import org.twinrig.screening.SessionReview;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Anchoring;
import org.twinrig.study.FrequencyRange;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/** Walks a study from its captures to its marked transfer. */
public final class Analysis {
  /** Resonances are looked for on this grid. */
  private static final int RESONANCE_BANDS_PER_OCTAVE = 48;

  private final Study study;
  private final int threads;
  private final Optional<StudyOutcome> earlier;

  private Analysis(Study study, int threads, Optional<StudyOutcome> earlier) {
    this.study = study;
    this.threads = threads;
    this.earlier = earlier;
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
    return new Analysis(study, threads, Optional.empty()).run(captures, fingerprint);
  }

  /**
   * Analyses a study again after a change. A kind whose units, resonances and settings are as they
   * were is taken from the earlier outcome: all else about a kind follows from them.
   *
   * @param earlier what was found before the change
   * @param study what the lab declares now
   * @param captures its captures as read
   * @param threads how many threads to work on
   * @return the same as {@link #of} would give, faster
   * @throws UnusableInput when no kind has a unit on both fixtures
   */
  public static StudyOutcome again(
      StudyOutcome earlier, Study study, FingerprintedCaptures captures, int threads)
      throws UnusableInput {
    return new Analysis(study, threads, Optional.of(earlier))
        .run(captures.captures(), captures.fingerprint());
  }

  /**
   * Captures and what they are known by.
   *
   * @param captures as read
   * @param fingerprint of the study's inputs
   */
  public record FingerprintedCaptures(List<Capture> captures, String fingerprint) {
    /** Copies the list. */
    public FingerprintedCaptures {
      captures = List.copyOf(captures);
    }
  }

  private StudyOutcome run(List<Capture> read, String fingerprint) throws UnusableInput {
    Anchoring anchoring = Anchoring.of(study.settings(), threads);
    Preparation prepared = Preparation.of(study, read, anchoring);
    Screening screening = prepared.screening();
    List<PairedUnits> paired = new Pairing(study).pair(screening.accepted(), Unit.Role.FIT);
    if (paired.isEmpty()) {
      List<Problem> problems = new ArrayList<>(prepared.problems());
      problems.add(
          Problem.fatal(
              "study.yaml",
              0,
              "no unit has an accepted capture on both fixtures",
              "capture at least " + study.settings().minUnits() + " units of a kind on both"));
      throw new UnusableInput(problems);
    }
    Map<String, PairedUnits> fine = fine(anchoring, screening.accepted());
    Optional<DriftCorrection> drift = prepared.review().flatMap(SessionReview::correction);
    List<KindOutcome> kinds =
        paired.stream()
            .map(p -> outcome(p, Optional.ofNullable(fine.get(p.kind())), drift))
            .toList();
    return new StudyOutcome(
        study,
        fingerprint,
        prepared.anchored(),
        screening,
        kinds,
        prepared.review(),
        prepared.problems());
  }

  private KindOutcome outcome(
      PairedUnits paired, Optional<PairedUnits> fine, Optional<DriftCorrection> drift) {
    Settings settings = study.settings();
    List<ResonanceWander> wanders = fine.map(this::wanders).orElse(List.of());
    Optional<KindOutcome> unchanged = unchanged(paired, wanders, drift);
    if (unchanged.isPresent()) {
      return unchanged.get();
    }
    MarkedKind kind = MarkedKind.of(study, paired, wanders, threads);
    KindEstimate estimate = kind.estimate();
    return new KindOutcome(
        paired,
        estimate,
        kind.transfer(),
        Zone.of(kind.transfer().bands()),
        wanders,
        RegionErrors.of(estimate, settings.confidence()),
        MarkStability.withDefaults()
            .withConfidence(settings.confidence())
            .withSeed(settings.seed())
            .of(estimate, kind.rule(), wanders),
        ErrorBudget.of(paired, estimate, settings, drift),
        Repeatability.of(paired, settings.confidence()),
        SeatingsNeeded.of(paired, estimate, settings.confidence()));
  }

  /** A kind's outcome is made from these, the settings and the fixtures, and nothing else. */
  private Optional<KindOutcome> unchanged(
      PairedUnits paired, List<ResonanceWander> wanders, Optional<DriftCorrection> drift) {
    return earlier
        .filter(e -> drift.isEmpty() && e.sessions().flatMap(SessionReview::correction).isEmpty())
        .filter(e -> e.study().settings().equals(study.settings()))
        .filter(e -> e.study().from().equals(study.from()) && e.study().to().equals(study.to()))
        .stream()
        .flatMap(e -> e.kinds().stream())
        .filter(k -> k.paired().equals(paired) && k.wanders().equals(wanders))
        .findFirst();
  }

  /** The accepted captures on the fine grid of the search range, paired like the coarse ones. */
  private Map<String, PairedUnits> fine(Anchoring anchoring, List<AnchoredCapture> accepted) {
    FrequencyRange search = study.settings().resonanceSearch();
    BandGrid grid = BandGrid.covering(search.fromHz(), search.toHz(), RESONANCE_BANDS_PER_OCTAVE);
    List<AnchoredCapture> fine = anchoring.onto(grid).reband(accepted);
    return new Pairing(study)
        .pair(fine, Unit.Role.FIT).stream()
            .collect(Collectors.toMap(PairedUnits::kind, Function.identity()));
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
