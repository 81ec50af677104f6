package org.twinrig.analysis;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.twinrig.band.FrequencyRange;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Unit;
import org.twinrig.regression.RandomEffects;
import org.twinrig.screening.Finding;
import org.twinrig.screening.Screening;
import org.twinrig.screening.Verdict;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.BandSample;
import org.twinrig.study.PairedUnits;
import org.twinrig.study.Settings;

/**
 * What it matters for the mean transfer of a kind whether the captures that the rules {@linkplain
 * org.twinrig.screening.Finding#disbelieved() do not believe} are used: the captures are paired
 * once with all of them in and once with all of them out, and the two means compared band by band.
 * What the lab left out, and copies of a curve, stay out of both.
 *
 * @param captures how many captures of its fitting units the rules do not believe
 * @param largest where the mean changes most; empty when no band has an estimate both ways
 * @param bass what becomes of the bass; empty when no band from 20 to 200 Hz has
 */
public record ScreeningEffect(
    String kind, int captures, Optional<Change> largest, Optional<Bass> bass) {
  private static final FrequencyRange BASS_HZ = new FrequencyRange(20, 200);

  /**
   * A change of the mean transfer.
   *
   * @param bandHz mid-band frequency in Hz
   * @param changeDb mean with the doubtful captures out minus mean with them in, dB
   */
  public record Change(double bandHz, double changeDb) {}

  /**
   * The mean transfer from 20 to 200 Hz, averaged over the bands there: where leaks show, of which
   * those of the new fixture are part of what it is like.
   *
   * @param withDb with the doubtful captures in, dB
   * @param withoutDb with them out, dB
   */
  public record Bass(double withDb, double withoutDb) {}

  /** The effect on every kind that has such captures: in the order of the outcome's kinds. */
  public static List<ScreeningEffect> of(StudyOutcome outcome) {
    Set<CaptureEntry> copies = new HashSet<>();
    Set<CaptureEntry> doubted = new HashSet<>();
    for (Verdict v : outcome.screening().verdicts()) {
      if (v.finding() == Finding.SAME_CONTENT) {
        copies.add(v.capture());
      } else if (v.finding().disbelieved()) {
        doubted.add(v.capture());
      }
    }
    doubted.removeAll(copies);
    if (doubted.isEmpty()) {
      return List.of();
    }
    List<AnchoredCapture> all =
        Screening.offered(outcome.captures()).stream()
            .filter(c -> !copies.contains(c.entry()))
            .toList();
    Map<String, PairedUnits> in = Analysis.paired(outcome.study(), all, Unit.Role.FIT);
    Map<String, PairedUnits> out =
        Analysis.paired(
            outcome.study(),
            all.stream().filter(c -> !doubted.contains(c.entry())).toList(),
            Unit.Role.FIT);
    List<ScreeningEffect> effects = new ArrayList<>();
    for (KindOutcome kind : outcome.kinds()) {
      int captures = count(outcome, kind.kind(), doubted);
      if (captures > 0 && in.containsKey(kind.kind())) {
        effects.add(
            of(
                kind.kind(),
                captures,
                in.get(kind.kind()),
                Optional.ofNullable(out.get(kind.kind()))));
      }
    }
    return effects;
  }

  private static int count(StudyOutcome outcome, String kind, Set<CaptureEntry> doubted) {
    Set<String> fitting =
        outcome.study().units().stream()
            .filter(u -> u.kind().equals(kind) && u.role() == Unit.Role.FIT)
            .map(Unit::name)
            .collect(Collectors.toSet());
    return (int) doubted.stream().filter(c -> fitting.contains(c.unit())).count();
  }

  private static ScreeningEffect of(
      String kind, int captures, PairedUnits in, Optional<PairedUnits> out) {
    Change largest = null;
    List<Bass> bass = new ArrayList<>();
    for (int b = 0; b < in.grid().size() && out.isPresent(); b++) {
      BandSample with = in.at(b);
      BandSample without = out.get().at(b);
      if (Math.min(with.size(), without.size()) >= Settings.FEWEST_UNITS) {
        Bass means = new Bass(meanDb(with), meanDb(without));
        double bandHz = in.grid().band(b).midHz();
        double changeDb = means.withoutDb - means.withDb;
        if (largest == null || Math.abs(changeDb) > Math.abs(largest.changeDb)) {
          largest = new Change(bandHz, changeDb);
        }
        if (BASS_HZ.contains(bandHz)) {
          bass.add(means);
        }
      }
    }
    Optional<Bass> mean =
        bass.isEmpty()
            ? Optional.empty()
            : Optional.of(
                new Bass(
                    bass.stream().mapToDouble(Bass::withDb).average().orElseThrow(),
                    bass.stream().mapToDouble(Bass::withoutDb).average().orElseThrow()));
    return new ScreeningEffect(kind, captures, Optional.ofNullable(largest), mean);
  }

  private static double meanDb(BandSample sample) {
    return new RandomEffects(0.95).fit(sample.differencesDb(), sample.variances()).meanDb();
  }
}
