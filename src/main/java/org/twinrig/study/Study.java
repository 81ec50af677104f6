package org.twinrig.study;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Session;
import org.twinrig.capture.Unit;

/**
 * What the lab declared: the content of a study folder but for the captures themselves.
 *
 * @param folder the study's folder; results go below it
 * @param title as reports print it
 * @param from the fixture the old graphs were made on
 * @param to the fixture graphs are translated to
 * @param units the sound rows of the units table, in its order
 * @param captures the sound rows of the captures table that lie on {@code from} or {@code to}, in
 *     its order; with those the lab excluded
 * @param sessions the sound rows of the sessions table, in its order; empty when there is none
 * @param catalogue the table of old graphs, if one is named
 * @param settings how the study is to be computed and judged
 * @param capturesFolder what the file names of {@code captures} are relative to
 * @param inputs study.yaml and the tables of units, captures and, if any, sessions, in this order:
 *     what results depend on besides the capture files
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
    List<Path> inputs) {

  /** Checks that the fixtures differ and copies the lists. */
  public Study {
    Objects.requireNonNull(folder, "folder");
    if (title.isBlank()) {
      throw new IllegalArgumentException("a study needs a title");
    }
    if (from.name().equals(to.name())) {
      throw new IllegalArgumentException("a study needs two different fixtures");
    }
    units = List.copyOf(units);
    captures = List.copyOf(captures);
    sessions = List.copyOf(sessions);
    Objects.requireNonNull(catalogue, "catalogue");
    Objects.requireNonNull(settings, "settings");
    Objects.requireNonNull(capturesFolder, "capturesFolder");
    inputs = List.copyOf(inputs);
  }

  /**
   * The same study under other settings.
   *
   * @param other the settings
   * @return the changed study
   */
  public Study withSettings(Settings other) {
    return new Study(
        folder,
        title,
        from,
        to,
        units,
        captures,
        sessions,
        catalogue,
        other,
        capturesFolder,
        inputs);
  }

  /**
   * The same study with other rows of captures, for example with one more excluded.
   *
   * @param other the rows
   * @return the changed study
   */
  public Study withCaptures(List<CaptureEntry> other) {
    return new Study(
        folder,
        title,
        from,
        to,
        units,
        other,
        sessions,
        catalogue,
        settings,
        capturesFolder,
        inputs);
  }
}
