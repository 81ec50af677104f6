package org.twinrig.simulation;

import java.util.Locale;
import org.twinrig.capture.Fixture;
import org.twinrig.internal.Numbers;

/** The study file of a simulated study. */
final class StudyYaml {
  private StudyYaml() {}

  static String text(SimulatedStudy study, String dataPrefix) {
    StringBuilder text = new StringBuilder();
    text.append("# A simulated study: its truth is known and stands in ");
    text.append(dataPrefix).append("truth/.\n");
    text.append("title: Plate to head\n");
    text.append("from: ").append(study.from().name()).append('\n');
    text.append("to: ").append(study.to().name()).append('\n');
    text.append("fixtures:\n").append(fixture(study.from())).append(fixture(study.to()));
    text.append("units: ").append(dataPrefix).append("units.csv\n");
    text.append("captures: ").append(dataPrefix).append("captures.csv\n");
    text.append("sessions: ").append(dataPrefix).append("sessions.csv\n");
    if (!study.catalogue().isEmpty()) {
      text.append("catalogue: ").append(dataPrefix).append("catalogue.csv\n");
    }
    text.append("zones:\n");
    text.append("  - { name: canal entrance resonance, fixture: ").append(study.from().name());
    text.append(", from_hz: 8000, to_hz: 10000 }\n");
    text.append("screening: { apply: exclude }\nseed: 1\n");
    return text.toString();
  }

  private static String fixture(Fixture fixture) {
    return String.format(
            Locale.ROOT,
            "  %s: { label: %s, ear_simulator: %s, specified_hz: [%s, %s] }",
            fixture.name(),
            fixture.label(),
            fixture.earSimulator(),
            Numbers.fixed(fixture.specifiedFromHz(), 0),
            Numbers.fixed(fixture.specifiedToHz(), 0))
        + "\n";
  }
}
