package org.twinrig.screening;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toList;

import java.util.Arrays;
import java.util.Collection;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.twinrig.band.Band;
import org.twinrig.band.BandGrid;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Session;
import org.twinrig.capture.Side;
import org.twinrig.response.Anchor;
import org.twinrig.response.Levels;
import org.twinrig.response.Response;
import org.twinrig.study.Study;

/**
 * Sorts the captures of the check unit into sessions, on octaves and not anchored.
 *
 * <p>Whatever the study does with doubtful captures, those of the check unit do not count here when
 * the lab left them out, when they have a lost seal or are copies: a leak would be taken for drift.
 * An odd seating does not count beside others of its session that are not odd. Where all seatings
 * of a session are odd they do: that is what a drift of the curve's shape looks like.
 */
final class CheckCaptures {
  static final BandGrid OCTAVES = BandGrid.covering(31.5, 16_000, 1);

  /**
   * Few captures cover the octave at 16 kHz up to its edge at 22.4 kHz. Its lower two third octaves
   * stand for it, 11.2 kHz to 17.8 kHz, in every capture alike.
   */
  static final Band TOP = OCTAVES.band(OCTAVES.size() - 1);

  private static final BandGrid TOP_THIRDS = BandGrid.covering(12_500, 16_000, 3);

  /** Where the level is taken when the study has no anchor of its own. */
  private static final Anchor LEVEL = new Anchor.Range(300, 1000);

  private static final int LEVEL_PER_OCTAVE = 12;

  private final Study study;
  private final List<Capture> captures;

  /**
   * The check unit's captures. Out of every capture of the study, corrected for its calibrator, and
   * the verdicts of screening.
   */
  CheckCaptures(Study study, List<Capture> corrected, List<Verdict> verdicts) {
    this.study = study;
    String unit = study.settings().checkUnit().orElseThrow();
    Set<CaptureEntry> odd = with(verdicts, Set.of(Finding.ODD_SEATING));
    Set<CaptureEntry> bad = with(verdicts, Set.of(Finding.LOST_SEAL, Finding.SAME_CONTENT));
    List<Capture> offered =
        corrected.stream()
            .filter(c -> c.entry().unit().equals(unit) && !c.entry().excludedByLab())
            .filter(c -> !bad.contains(c.entry()))
            .toList();
    Set<List<String>> even =
        offered.stream()
            .filter(c -> !odd.contains(c.entry()))
            .map(c -> held(c.entry()))
            .collect(Collectors.toSet());
    this.captures =
        offered.stream()
            .filter(c -> !odd.contains(c.entry()) || !even.contains(held(c.entry())))
            .toList();
  }

  private static Set<CaptureEntry> with(List<Verdict> verdicts, Set<Finding> findings) {
    return verdicts.stream()
        .filter(v -> findings.contains(v.finding()))
        .map(Verdict::capture)
        .collect(Collectors.toSet());
  }

  private static List<String> held(CaptureEntry entry) {
    return List.of(entry.fixture(), entry.session());
  }

  static Anchor level(Anchor ofStudy) {
    return ofStudy instanceof Anchor.None ? LEVEL : ofStudy;
  }

  /**
   * The sessions of a fixture in which the unit was captured, in the order of time. Two sides of a
   * headphone differ by more than a chain drifts: only captures of the same side or sides are
   * compared, and a session without them is left out.
   */
  List<CheckSession> on(String fixture) {
    Map<String, List<Capture>> bySession = new LinkedHashMap<>();
    for (Session session : Session.inOrder(study.sessions(), fixture)) {
      List<String> place = List.of(fixture, session.name());
      List<Capture> own = captures.stream().filter(c -> held(c.entry()).equals(place)).toList();
      if (!own.isEmpty()) {
        bySession.put(session.name(), own);
      }
    }
    Set<Side> sides = shared(bySession.values().stream().map(CheckCaptures::sides).toList());
    return bySession.entrySet().stream()
        .map(own -> seated(own.getKey(), own.getValue(), sides))
        .filter(s -> s.seatings() > 0)
        .toList();
  }

  private static Set<Side> sides(List<Capture> captures) {
    return captures.stream()
        .map(c -> c.entry().side())
        .collect(Collectors.toCollection(() -> EnumSet.noneOf(Side.class)));
  }

  /** The sides that most sessions have: several only when the same sessions have all of them. */
  static Set<Side> shared(List<Set<Side>> sessions) {
    long most = 0;
    Set<Side> shared = EnumSet.noneOf(Side.class);
    for (Side side : Side.values()) {
      long count = sessions.stream().filter(s -> s.contains(side)).count();
      Set<Side> with = EnumSet.of(side);
      with.addAll(shared);
      if (count > most) {
        most = count;
        shared = EnumSet.of(side);
      } else if (count > 0
          && count == most
          && sessions.stream().filter(s -> s.containsAll(with)).count() == most) {
        shared = with;
      }
    }
    return shared;
  }

  /** Sides of a seating are averaged in dB, as everywhere; one that lacks a side does not count. */
  private CheckSession seated(String session, List<Capture> own, Set<Side> sides) {
    Collection<List<Capture>> whole =
        own.stream()
            .filter(c -> sides.contains(c.entry().side()) && level(c).isPresent())
            .collect(groupingBy(c -> c.entry().seating(), TreeMap::new, toList()))
            .values();
    whole.removeIf(seating -> !sides(seating).equals(sides));
    return new CheckSession(
        session,
        whole.stream()
            .map(s -> s.stream().mapToDouble(c -> level(c).orElseThrow()).average().orElseThrow())
            .toList(),
        whole.stream().map(CheckCaptures::meanCurve).toList());
  }

  private OptionalDouble level(Capture capture) {
    return level(study.settings().anchor()).levelOf(capture.response(), LEVEL_PER_OCTAVE);
  }

  static Levels octaves(Response response) {
    Levels octaves = Levels.of(response, OCTAVES);
    Levels thirds = Levels.of(response, TOP_THIRDS);
    int top = OCTAVES.size() - 1;
    double[] db = new double[OCTAVES.size()];
    Arrays.setAll(db, b -> octaves.level(b).orElse(Double.NaN));
    db[top] =
        (thirds.level(0).orElse(Double.NaN) + thirds.level(1).orElse(Double.NaN))
            / TOP_THIRDS.size();
    return Levels.copyOf(OCTAVES, db);
  }

  /** An octave counts only when every side has it: sides differ too much to stand for another. */
  private static Levels meanCurve(List<Capture> seating) {
    List<Levels> sides = seating.stream().map(c -> octaves(c.response())).toList();
    double[] means = new double[OCTAVES.size()];
    for (Levels side : sides) {
      Arrays.setAll(means, b -> means[b] + side.level(b).orElse(Double.NaN));
    }
    return Levels.copyOf(OCTAVES, Arrays.stream(means).map(sum -> sum / sides.size()).toArray());
  }
}
