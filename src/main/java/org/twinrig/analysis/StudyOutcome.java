package org.twinrig.analysis;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Unit;
import org.twinrig.doubt.DepartsFromItsKind;
import org.twinrig.doubt.Doubt;
import org.twinrig.evidence.AnchorEffect;
import org.twinrig.evidence.RegionEquivalence;
import org.twinrig.evidence.Sensitivity;
import org.twinrig.internal.Later;
import org.twinrig.internal.Parallel;
import org.twinrig.problem.Problem;
import org.twinrig.reliability.MarkedBand;
import org.twinrig.reliability.ResonanceWander;
import org.twinrig.response.Smoothing;
import org.twinrig.screening.Screening;
import org.twinrig.screening.SessionReview;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Anchoring;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Pairing;
import org.twinrig.study.Setting;
import org.twinrig.study.Study;
import org.twinrig.translation.Chain;
import org.twinrig.translation.LevelShift;
import org.twinrig.translation.TransferFunction;
import org.twinrig.translation.Translation;

/**
 * Everything a study found.
 *
 * @param captures every capture that could be used, whether it counted or not
 * @param screening which of them counted, and what was found
 * @param kinds one outcome per kind that has units on both fixtures
 * @param sessions what the check unit says of the sessions, if the study names one
 * @param problems what was wrong with captures, found on this way
 * @param doubted gives claims that the data contradict; what results would be without them is
 *     worked out when first asked for
 */
public record StudyOutcome(
    Study study,
    String fingerprint,
    List<AnchoredCapture> captures,
    Screening screening,
    List<KindOutcome> kinds,
    Optional<SessionReview> sessions,
    List<Problem> problems,
    Supplier<List<Doubt>> doubted) {

  public StudyOutcome {
    captures = List.copyOf(captures);
    kinds = List.copyOf(kinds);
    problems = List.copyOf(problems);
  }

  /** All that is needed to re-express graphs: the transfer functions with their marks. */
  public Translation translation() {
    Translation.Handling handling =
        new Translation.Handling(
            study.settings().captureSmoothing(),
            sidesPerSeating(),
            study.settings().publishing(),
            study.reference(study.from()),
            study.reference(study.to()));
    return translation(
            study, fingerprint, handling, kinds.stream().map(KindOutcome::transfer).toList())
        .withLevelShifts(levelShifts());
  }

  /** The study as a link of a chain; on so many threads fitted anew where graphs are smoothed. */
  public Chain.Link link(int threads) {
    Supplier<Map<String, CaptureEntry>> files =
        new Later<>(
            () ->
                captures.stream()
                    .collect(
                        Collectors.toMap(
                            c -> c.capture().sha256(), AnchoredCapture::entry, (a, b) -> a)));
    return new Chain.Link(
        translation(),
        Optional.of(
            new Chain.Captures() {
              @Override
              public Translation refit(Smoothing smoothing) {
                return smoothed(smoothing, threads);
              }

              @Override
              public List<Pairing.OnOldFixture> onOldFixture(Smoothing smoothing) {
                return new Pairing(study).onOldFixture(accepted(smoothing, threads));
              }

              @Override
              public Optional<CaptureEntry> ofFile(String sha256) {
                return Optional.ofNullable(files.get().get(sha256));
              }

              @Override
              public Study study() {
                return study;
              }
            }));
  }

  /**
   * The study fitted anew with its captures smoothed, for old graphs that were smoothed.
   *
   * <p>The same captures count as in the study itself, and resonances wander where they do there:
   * what was believed and what the fixtures do does not depend on how an old graph was drawn. Every
   * capture is smoothed before it is pinned and put on bands.
   */
  public Translation smoothed(Smoothing smoothing, int threads) {
    Map<String, List<ResonanceWander>> wanders =
        kinds.stream().collect(Collectors.toMap(KindOutcome::kind, KindOutcome::wanders));
    List<TransferFunction> again = new ArrayList<>();
    for (PairedUnits paired :
        new Pairing(study).pair(accepted(smoothing, threads), Unit.Role.FIT)) {
      List<ResonanceWander> wander = wanders.getOrDefault(paired.kind(), List.of());
      again.add(MarkedKind.of(study, paired, wander, threads).transfer());
    }
    return translation().withKinds(again);
  }

  private List<AnchoredCapture> accepted(Smoothing smoothing, int threads) {
    if (smoothing.equals(Smoothing.NONE)) {
      return screening.accepted();
    }
    List<Capture> smoothed =
        Parallel.map(
            screening.accepted(),
            threads,
            a -> a.capture().withResponse(smoothing.apply(a.capture().response())));
    return Anchoring.of(study.settings(), threads).apply(smoothed).value();
  }

  /** In which regions as a whole the fixtures are shown to agree, all kinds tested together. */
  public List<RegionEquivalence> regionEquivalence() {
    return RegionEquivalence.of(
        kinds.stream().map(k -> k.evidence().equivalence()).toList(),
        kinds.stream().map(k -> k.paired().grid()).toList());
  }

  /** By how much kinds read louder on the new fixture: of those whose levels are known on both. */
  public List<LevelShift> levelShifts() {
    return LevelShift.of(study, screening.accepted());
  }

  /** Claims that the study's own data contradict or leave open. */
  public List<Doubt> doubts() {
    return doubted.get();
  }

  /** Which units depart from their kind, or could have been found to, by kind. */
  public List<DepartsFromItsKind> departures() {
    return kinds.stream().map(k -> DepartsFromItsKind.of(k.paired())).toList();
  }

  /** How loud units are for what drives them, where that is noted. */
  public List<Sensitivity> sensitivities() {
    return Sensitivity.of(study, screening.accepted());
  }

  /** What other anchors would make of the bass, by kind. */
  public List<AnchorEffect> anchorEffects() {
    Map<String, LevelShift> shifts =
        levelShifts().stream().collect(Collectors.toMap(LevelShift::kind, s -> s));
    return kinds.stream()
        .map(
            k ->
                AnchorEffect.of(
                    k.kind(),
                    k.transfer().bands().stream().map(MarkedBand::outcome).toList(),
                    Optional.ofNullable(shifts.get(k.kind()))))
        .toList();
  }

  static Translation translation(
      Study study,
      String fingerprint,
      Translation.Handling handling,
      List<TransferFunction> kinds) {
    return new Translation(
        new Translation.Origin(
            study.title(),
            study.from(),
            study.to(),
            study.settings().anchor().words(),
            fingerprint,
            study.days(),
            study.settings().get(Setting.VALID_UNTIL)),
        study.settings().anchor(),
        study.settings().grid(),
        study.settings().confidence(),
        study.settings().tolerance(),
        study.settings().minUnits(),
        handling,
        kinds,
        List.of());
  }

  /** Mean number of sides over the accepted seatings on the old fixture. */
  private double sidesPerSeating() {
    Map<String, Integer> sides = new HashMap<>();
    for (AnchoredCapture capture : screening.accepted()) {
      CaptureEntry entry = capture.entry();
      if (entry.fixture().equals(study.from().name())) {
        sides.merge(entry.unit() + "\n" + entry.seating(), 1, Integer::sum);
      }
    }
    double mean = sides.values().stream().mapToInt(n -> n).average().orElse(1);
    return Math.min(2, Math.max(1, mean));
  }
}
