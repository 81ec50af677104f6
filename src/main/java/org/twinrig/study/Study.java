package org.twinrig.study;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.twinrig.capture.CalibratorClass;
import org.twinrig.capture.Capture;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Session;
import org.twinrig.capture.Unit;

/**
 * What the lab declared: the content of a study folder but for the captures themselves.
 *
 * @param folder results go below it
 * @param from the fixture the old graphs were made on; they are translated to the other
 * @param units the sound rows of the units table, in its order
 * @param captures the sound rows of the captures table that lie on {@code from} or {@code to}, in
 *     its order; with those the lab excluded
 * @param sessions the sound rows of the sessions table, in its order; empty when there is none
 * @param catalogue the table of old graphs, if one is named
 * @param capturesFolder what the file names of {@code captures} are relative to
 * @param inputs study.yaml and the tables of units, captures and, if any, sessions, and the
 *     reference curves, in this order: what results depend on besides the capture files
 * @param references the curves the lab subtracts from graphs, by the name of the fixture
 */
public record Study(
    Path folder,
    String title,
    Fixture from,
    Fixture to,
    List<Unit> units,
    List<CaptureEntry> captures,
    List<Session> sessions,
    Optional<Path> catalogue,
    Settings settings,
    Path capturesFolder,
    List<Path> inputs,
    Map<String, ReferenceCurve> references) {

  public Study {
    if (title.isBlank()) {
      throw new IllegalArgumentException("a study needs a title");
    }
    if (from.name().equals(to.name())) {
      throw new IllegalArgumentException("a study needs two different fixtures");
    }
    units = List.copyOf(units);
    captures = List.copyOf(captures);
    sessions = List.copyOf(sessions);
    inputs = List.copyOf(inputs);
    references = Map.copyOf(references);
  }

  /** First and last day of sessions. */
  public record Days(LocalDate first, LocalDate last) {
    /** In words: for example {@code 2026-03-02 to 2026-03-25}. */
    public String words() {
      return first.equals(last) ? first.toString() : first + " to " + last;
    }
  }

  /**
   * When the two fixtures' sessions were held; nothing without any, or where a day is not known.
   */
  public Optional<Days> days() {
    List<Optional<LocalDate>> days =
        sessions.stream()
            .filter(s -> s.fixture().equals(from.name()) || s.fixture().equals(to.name()))
            .map(s -> s.time().map(LocalDateTime::toLocalDate))
            .toList();
    if (days.isEmpty() || days.contains(Optional.<LocalDate>empty())) {
      return Optional.empty();
    }
    List<LocalDate> sorted = days.stream().flatMap(Optional::stream).sorted().toList();
    return Optional.of(new Days(sorted.get(0), sorted.get(sorted.size() - 1)));
  }

  /** The same study under other settings. */
  public Study withSettings(Settings other) {
    return with(from, to, catalogue, other);
  }

  /**
   * The same study read the other way, from the new fixture to the old one: without a catalogue,
   * because old graphs were made on the other fixture.
   */
  public Study reversed() {
    return with(to, from, Optional.empty(), settings);
  }

  private Study with(Fixture old, Fixture now, Optional<Path> graphs, Settings other) {
    return new Study(
        folder,
        title,
        old,
        now,
        units,
        captures,
        sessions,
        graphs,
        other,
        capturesFolder,
        inputs,
        references);
  }

  /**
   * Captures with their session's calibrator made to read true: to every level is added what it
   * gave (the stated level; of a pistonphone, at the session's static pressure) minus what was
   * read, dB. Those of no session stay as they were.
   *
   * @throws IllegalArgumentException when a capture names a session the study lacks; {@link
   *     StudyReader} lets no such row through
   */
  public List<Capture> corrected(List<Capture> captures) {
    Map<String, Double> correctionsDb = new HashMap<>(Map.of("", 0.0));
    sessions.forEach(session -> correctionsDb.put(session.name(), session.correctionDb()));
    return captures.stream()
        .map(
            c -> {
              Double db = correctionsDb.get(c.entry().session());
              if (db == null) {
                throw new IllegalArgumentException(
                    "the study has no session " + c.entry().session());
              }
              return c.plus(db);
            })
        .toList();
  }

  /** How many captures the lab itself left out: 0 or more. */
  public long leftOutByLab() {
    return captures.stream().filter(CaptureEntry::excludedByLab).count();
  }

  /** Class of the calibrator that is used on a fixture: its own, else that of the study. */
  public Optional<CalibratorClass> calibratorClass(Fixture fixture) {
    return fixture.calibratorClass().or(settings::calibratorClass);
  }

  /** The fixture a session was held on; nothing when it is neither of the two. */
  public Optional<Fixture> fixture(Session session) {
    return Stream.of(from, to).filter(f -> f.name().equals(session.fixture())).findFirst();
  }

  /** The curve the lab subtracts from graphs made on one of the fixtures, if it names one. */
  public Optional<ReferenceCurve> reference(Fixture fixture) {
    return Optional.ofNullable(references.get(fixture.name()));
  }
}
