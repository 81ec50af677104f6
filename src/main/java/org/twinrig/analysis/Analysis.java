package org.twinrig.analysis;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.twinrig.band.BandGrid;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.Capture;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Unit;
import org.twinrig.evidence.Equivalence;
import org.twinrig.evidence.ErrorBudget;
import org.twinrig.evidence.RankKeeping;
import org.twinrig.evidence.Repeatability;
import org.twinrig.evidence.SeatingsNeeded;
import org.twinrig.evidence.Trial;
import org.twinrig.evidence.Validation;
import org.twinrig.internal.Later;
import org.twinrig.internal.Numbers;
import org.twinrig.internal.Parallel;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.regression.KindEstimate;
import org.twinrig.reliability.FixtureFeatures;
import org.twinrig.reliability.MarkStability;
import org.twinrig.reliability.Resonance;
import org.twinrig.reliability.ResonanceWander;
import org.twinrig.reliability.Zone;
import org.twinrig.response.Response;
import org.twinrig.screening.DriftCorrection;
import org.twinrig.screening.Finding;
import org.twinrig.screening.Screening;
import org.twinrig.screening.SessionReview;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Anchoring;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.study.ReferenceCurve;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.Translation;

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
   * @throws UnusableInput when no kind has a unit on both fixtures
   */
  public static StudyOutcome again(
      StudyOutcome earlier, Study study, List<Capture> captures, String fingerprint, int threads)
      throws UnusableInput {
    return new Analysis(study, threads, Optional.of(earlier)).run(captures, fingerprint);
  }

  /** Captures the lab itself left out, and copies, may be why nothing is left. */
  private String leftOut(Screening screening) {
    long byLab = study.leftOutByLab();
    long copies =
        screening.verdicts().stream().filter(v -> v.finding() == Finding.SAME_CONTENT).count();
    return (byLab == 0
            ? ""
            : "; " + Numbers.count(byLab, "capture is", "captures are") + " left out by `exclude`")
        + (copies == 0
            ? ""
            : "; "
                + Numbers.count(copies, "capture is a copy", "captures are copies")
                + " of an earlier one");
  }

  /**
   * The check unit can only be looked at once the captures are screened. Where its drift is to be
   * corrected, anchoring and screening are therefore done again on the corrected captures.
   */
  private StudyOutcome run(List<Capture> read, String fingerprint) throws UnusableInput {
    Anchoring anchoring = Anchoring.of(study.settings(), threads);
    List<Capture> corrected = study.corrected(read);
    Findings<List<AnchoredCapture>> anchored = anchoring.apply(corrected);
    Screening screening = Screening.of(study, anchored.value());
    Optional<SessionReview> review = SessionReview.of(study, corrected, screening);
    Optional<DriftCorrection> drift = review.flatMap(SessionReview::correction);
    if (drift.isPresent()) {
      anchored = anchoring.apply(drift.get().apply(corrected));
      screening = screening.again(study, anchored.value());
    }
    List<Problem> problems = new ArrayList<>(anchored.problems());
    problems.addAll(beyondUsable(corrected));
    if (review.isPresent()) {
      problems.addAll(review.get().notes());
      screening = screening.with(review.get().verdicts(study.captures()));
    }
    List<KindOutcome> kinds = kinds(anchoring, screening, drift, problems);
    StudyDoubts doubts = new StudyDoubts(study, screening, kinds, threads);
    return new StudyOutcome(
        study,
        fingerprint,
        anchored.value(),
        screening,
        kinds,
        review,
        problems,
        new Later<>(doubts::found));
  }

  /** Where captures show more than a fixture can be used for. */
  private List<Problem> beyondUsable(List<Capture> captures) {
    List<Problem> notes = new ArrayList<>();
    for (Fixture fixture : List.of(study.from(), study.to())) {
      List<Response> own =
          captures.stream()
              .filter(c -> c.entry().fixture().equals(fixture.name()))
              .map(Capture::response)
              .toList();
      double fromHz = own.stream().mapToDouble(Response::fromHz).min().orElse(0);
      double toHz = own.stream().mapToDouble(Response::toHz).max().orElse(0);
      boolean beyond =
          fixture.usable().isPresent()
              && study.settings().grid().bands().stream()
                  .filter(b -> b.lowerHz() >= fromHz && b.upperHz() <= toHz)
                  .anyMatch(b -> !fixture.usable().get().holds(b));
      if (beyond) {
        notes.add(
            Problem.note(
                "study.yaml",
                0,
                ("captures on `%s` reach from %s to %s and `usable_hz` from %s to %s: bands outside it"
                        + " are caution at best")
                    .formatted(
                        fixture.name(),
                        Numbers.hertz(fromHz),
                        Numbers.hertz(toHz),
                        Numbers.hertz(fixture.usable().get().fromHz()),
                        Numbers.hertz(fixture.usable().get().toHz()))));
      }
    }
    return notes;
  }

  private List<KindOutcome> kinds(
      Anchoring anchoring,
      Screening screening,
      Optional<DriftCorrection> drift,
      List<Problem> problems)
      throws UnusableInput {
    List<PairedUnits> paired = new Pairing(study).pair(screening.accepted(), Unit.Role.FIT);
    if (paired.isEmpty()) {
      problems.add(
          Problem.fatal(
              "study.yaml",
              0,
              "no unit has an accepted capture on both fixtures" + leftOut(screening),
              "mend what was refused; if nothing was, capture at least "
                  + study.settings().minUnits()
                  + " units of a kind on both"));
      throw new UnusableInput(problems);
    }
    Map<String, PairedUnits> fine = fine(anchoring, screening.accepted());
    Map<String, PairedUnits> heldOut = paired(study, screening.accepted(), Unit.Role.HOLDOUT);
    List<Supplier<KindOutcome>> kinds = new ArrayList<>();
    for (PairedUnits units : paired) {
      List<ResonanceWander> wanders =
          fine.containsKey(units.kind()) ? wanders(fine.get(units.kind())) : List.of();
      kinds.add(outcome(units, wanders, Optional.ofNullable(heldOut.get(units.kind())), drift));
    }
    return Parallel.map(kinds, threads, Supplier::get);
  }

  /**
   * Estimates a kind, on all threads; what follows from the estimate is left to be asked for, so
   * that kinds share the threads. Two estimates at once would need twice the memory.
   */
  private Supplier<KindOutcome> outcome(
      PairedUnits paired,
      List<ResonanceWander> wanders,
      Optional<PairedUnits> heldOut,
      Optional<DriftCorrection> drift) {
    Settings settings = study.settings();
    Optional<KindOutcome> unchanged =
        heldOut.isEmpty() && drift.isEmpty() ? unchanged(paired, wanders) : Optional.empty();
    if (unchanged.isPresent()) {
      return unchanged::get;
    }
    MarkedKind kind = MarkedKind.of(study, paired, wanders, threads);
    KindEstimate estimate = kind.estimate();
    return () -> {
      List<Trial> unseen =
          heldOut.map(h -> heldOut(kind.transfer(), estimate, h)).orElse(List.of());
      KindEvidence evidence = evidence(paired, estimate, unseen);
      return new KindOutcome(
          paired,
          estimate,
          kind.transfer(),
          Zone.of(kind.transfer().bands()),
          wanders,
          new MarkStability(settings.confidence(), settings.seed())
              .of(estimate, kind.rule(), wanders),
          new Later<>(() -> ErrorBudget.of(paired, estimate, study, drift)),
          Repeatability.of(paired, settings.confidence()),
          SeatingsNeeded.of(paired, estimate, settings.confidence()),
          evidence);
    };
  }

  private KindEvidence evidence(PairedUnits paired, KindEstimate estimate, List<Trial> heldOut) {
    Settings settings = study.settings();
    double confidence = settings.confidence();
    return new KindEvidence(
        Equivalence.of(
            estimate, settings.anchor(), settings.tolerance().equivalenceDb(), confidence),
        Validation.of(paired.grid(), Trial.leftOut(estimate), confidence),
        Validation.of(paired.grid(), heldOut, confidence),
        references().map(r -> new RankKeeping(confidence).of(paired, r)),
        new FixtureFeatures(confidence, settings.seed(), threads).of(paired));
  }

  /** What units are ranked by; nothing when the lab names no reference for one of the fixtures. */
  private Optional<RankKeeping.References> references() {
    Settings settings = study.settings();
    Optional<ReferenceCurve> from = study.reference(study.from());
    Optional<ReferenceCurve> to = study.reference(study.to());
    return from.isPresent() && to.isPresent()
        ? RankKeeping.References.pinned(
            from.get().curve(),
            to.get().curve(),
            settings.anchor(),
            settings.grid(),
            settings.publishing().compared())
        : Optional.empty();
  }

  /** A kind's outcome is made from these, the settings and the fixtures, and nothing else. */
  private Optional<KindOutcome> unchanged(PairedUnits paired, List<ResonanceWander> wanders) {
    return earlier
        .filter(e -> e.sessions().flatMap(SessionReview::correction).isEmpty())
        .filter(e -> e.study().settings().equals(study.settings()))
        .filter(e -> e.study().from().equals(study.from()) && e.study().to().equals(study.to()))
        .filter(e -> e.study().references().equals(study.references()))
        .stream()
        .flatMap(e -> e.kinds().stream())
        .filter(k -> k.paired().equals(paired) && k.wanders().equals(wanders))
        .filter(k -> k.evidence().heldOut().worst(Optional.empty()).isEmpty())
        .findFirst();
  }

  /** The accepted captures on the fine grid of their kind's search range, paired by kind. */
  private Map<String, PairedUnits> fine(Anchoring anchoring, List<AnchoredCapture> accepted) {
    Map<String, FrequencyRange> searched =
        study.units().stream()
            .collect(Collectors.toMap(Unit::name, u -> study.settings().resonanceSearch(u.kind())));
    Map<FrequencyRange, List<AnchoredCapture>> together =
        accepted.stream()
            .collect(Collectors.groupingBy(c -> searched.get(c.capture().entry().unit())));
    Map<String, PairedUnits> fine = new HashMap<>();
    together.forEach(
        (search, captures) -> {
          BandGrid grid =
              BandGrid.covering(search.fromHz(), search.toHz(), RESONANCE_BANDS_PER_OCTAVE);
          fine.putAll(paired(study, anchoring.onto(grid).reband(captures), Unit.Role.FIT));
        });
    return fine;
  }

  /** Captures of fitting units, or of those held out, paired: by kind. */
  static Map<String, PairedUnits> paired(
      Study study, List<AnchoredCapture> captures, Unit.Role role) {
    return new Pairing(study)
        .pair(captures, role).stream()
            .collect(Collectors.toMap(PairedUnits::kind, Function.identity()));
  }

  private List<Trial> heldOut(
      TransferFunction transfer, KindEstimate estimate, PairedUnits unseen) {
    return Trial.heldOut(
        StudyOutcome.translation(study, "", Translation.Handling.plain(), List.of(transfer)),
        estimate,
        unseen);
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
