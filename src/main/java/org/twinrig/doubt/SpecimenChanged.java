package org.twinrig.doubt;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Session;
import org.twinrig.capture.Setup;
import org.twinrig.study.Study;

/**
 * Whether a fixture stayed the same through the study: a transfer belongs to two specimens, and an
 * ear simulator, microphone or pinna that was changed between sessions makes a third one. A session
 * that notes nothing is taken to be like the one before it.
 */
public final class SpecimenChanged {
  /** The doubt as files name it. */
  public static final String DOUBT = "specimen changed";

  private SpecimenChanged() {}

  /** One doubt for every change, by fixture and part, in the order of time. */
  public static List<Doubt> of(Study study) {
    List<Doubt> doubts = new ArrayList<>();
    for (Fixture fixture : List.of(study.from(), study.to())) {
      List<Session> sessions = Session.inOrder(study.sessions(), fixture.name());
      for (Map.Entry<String, Function<Setup, String>> part : Setup.PARTS.entrySet()) {
        String before = "";
        for (Session session : sessions) {
          String now = part.getValue().apply(session.setup());
          if (!before.isEmpty() && !now.isEmpty() && !now.equals(before)) {
            doubts.add(doubt(fixture, session, part.getKey(), before, now));
          }
          before = now.isEmpty() ? before : now;
        }
      }
    }
    return doubts;
  }

  private static Doubt doubt(
      Fixture fixture, Session session, String part, String before, String now) {
    return Doubt.open(
        Doubt.Subject.SESSION,
        session.name(),
        fixture.name(),
        DOUBT,
        new Doubt.Found("`" + part + "` " + now + " after " + before, "no change"),
        "`"
            + part
            + "` is "
            + now
            + " after "
            + before
            + ": from here on the fixture is another specimen, or a serial is"
            + " mistyped.",
        "What the part changes is counted as scatter between units. Correct the serial; or make a"
            + " fixture of its own of the sessions from here on.");
  }
}
