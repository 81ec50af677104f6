package org.twinrig.study;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.twinrig.capture.Capture;
import org.twinrig.capture.Session;

/**
 * Makes the calibrator of a session read true: adds the level it gave (the stated one; of a
 * pistonphone, at the session's static pressure) minus the level that was read, in dB, to every
 * level of the session's captures.
 */
public final class SessionCorrection {
  private SessionCorrection() {}

  /**
   * Corrects captures.
   *
   * @param captures as they were read
   * @param study names the sessions
   * @return the same captures in the same order; those of no session as they were
   * @throws IllegalArgumentException when a capture names a session the study lacks; {@link
   *     StudyReader} lets no such row through
   */
  public static List<Capture> apply(List<Capture> captures, Study study) {
    Map<String, Session> sessions =
        study.sessions().stream().collect(Collectors.toMap(Session::name, s -> s));
    return captures.stream().map(capture -> corrected(capture, sessions)).toList();
  }

  private static Capture corrected(Capture capture, Map<String, Session> sessions) {
    String name = capture.entry().session();
    if (name.isEmpty()) {
      return capture;
    }
    Session session = sessions.get(name);
    if (session == null) {
      throw new IllegalArgumentException("the study has no session " + name);
    }
    return capture.plus(session.correctionDb());
  }
}
