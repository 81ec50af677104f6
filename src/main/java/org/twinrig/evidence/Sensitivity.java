package org.twinrig.evidence;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Fixture;
import org.twinrig.capture.Session;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Checks;
import org.twinrig.response.Anchor;
import org.twinrig.study.AnchoredCapture;
import org.twinrig.study.Study;

/**
 * How loud a unit is on a fixture for what drives it: its mean level from 500 Hz to 1 kHz, dB SPL,
 * at 1 V and, where its impedance {@code Z} is known, at 1 mW into it. With a drive of {@code U}
 * the level at 1 V is lower by {@code 20·lg(U/1 V)}; 1 mW takes {@code √(0.001 W·Z)}. IEC 60268-7
 * states characteristic sensitivity so (from memory); its own conditions of measurement are not
 * ours.
 *
 * @param levelAt1VoltDb mean over the accepted captures whose session notes the drive
 * @param levelAt1MilliwattDb nothing where the impedance is not noted
 */
public record Sensitivity(
    Unit unit,
    String fixture,
    int captures,
    double levelAt1VoltDb,
    OptionalDouble levelAt1MilliwattDb) {
  private static final Anchor MIDDLE = new Anchor.Range(500, 1000);
  private static final int PER_OCTAVE = 12;

  public Sensitivity {
    Checks.finite(levelAt1VoltDb, "a level at 1 V in dB");
  }

  /** Of every unit on either fixture, where the drive of all its accepted captures is noted. */
  public static List<Sensitivity> of(Study study, Collection<AnchoredCapture> accepted) {
    Map<String, Session> sessions =
        study.sessions().stream().collect(Collectors.toMap(Session::name, Function.identity()));
    Map<String, List<OptionalDouble>> levels = new LinkedHashMap<>();
    for (AnchoredCapture c : accepted) {
      CaptureEntry entry = c.capture().entry();
      Session session = sessions.get(entry.session());
      levels
          .computeIfAbsent(key(entry.unit(), entry.fixture()), k -> new ArrayList<>())
          .add(session == null ? OptionalDouble.empty() : at1Volt(c, session));
    }
    List<Sensitivity> found = new ArrayList<>();
    for (Unit unit : study.units()) {
      for (Fixture fixture : List.of(study.from(), study.to())) {
        List<OptionalDouble> own = levels.getOrDefault(key(unit.name(), fixture.name()), List.of());
        if (!own.isEmpty() && own.stream().allMatch(OptionalDouble::isPresent)) {
          double db = own.stream().mapToDouble(OptionalDouble::getAsDouble).average().orElseThrow();
          OptionalDouble ohm = unit.impedanceOhm();
          OptionalDouble atPower =
              ohm.isPresent()
                  ? OptionalDouble.of(db + 10 * Math.log10(0.001 * ohm.getAsDouble()))
                  : OptionalDouble.empty();
          found.add(new Sensitivity(unit, fixture.name(), own.size(), db, atPower));
        }
      }
    }
    return found;
  }

  private static String key(String unit, String fixture) {
    return fixture + "\n" + unit;
  }

  private static OptionalDouble at1Volt(AnchoredCapture capture, Session session) {
    OptionalDouble drive = session.setup().driveV();
    OptionalDouble level = MIDDLE.levelOf(capture.capture().response(), PER_OCTAVE);
    return drive.isPresent() && level.isPresent()
        ? OptionalDouble.of(
            level.getAsDouble() + capture.anchorDb() - 20 * Math.log10(drive.getAsDouble()))
        : OptionalDouble.empty();
  }
}
