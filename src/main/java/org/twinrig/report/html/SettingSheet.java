package org.twinrig.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.twinrig.capture.Unit;
import org.twinrig.internal.Numbers;
import org.twinrig.spectrum.SoundContent;
import org.twinrig.study.DbLimit;
import org.twinrig.study.DeclaredZone;
import org.twinrig.study.DriftMode;
import org.twinrig.study.ScreeningMode;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;

/** What the study was computed with and from. */
public final class SettingSheet {
  private SettingSheet() {}

  /** One row per setting. */
  public static Sheet<?> of(Study study) {
    Settings s = study.settings();
    List<Map.Entry<String, String>> rows = new ArrayList<>();
    rows.add(Map.entry("Old fixture", study.from().label()));
    rows.add(Map.entry("New fixture", study.to().label()));
    rows.add(Map.entry("Bands", bands(s)));
    rows.add(Map.entry("Anchor", s.anchor().words()));
    rows.add(Map.entry("Confidence of every interval", percent(s.confidence())));
    rows.add(Map.entry("Reliable", "half-width up to " + limit(s.tolerance().reliable())));
    rows.add(Map.entry("Caution", "half-width up to " + limit(s.tolerance().caution())));
    rows.add(Map.entry("Fewest units", Numbers.count(s.minUnits(), "unit", "units") + " a kind"));
    s.zones()
        .forEach(z -> rows.add(Map.entry("Zone declared by the lab", z.name() + ": " + range(z))));
    rows.add(
        Map.entry(
            "Resonances searched",
            Numbers.hertz(s.resonanceSearch().fromHz())
                + " to "
                + Numbers.hertz(s.resonanceSearch().toHz())));
    rows.add(Map.entry("Screening", screening(s.screening())));
    s.calibratorClass()
        .ifPresent(c -> rows.add(Map.entry("Class of the calibrators (IEC 60942)", c.word())));
    s.sessions()
        .checkUnit()
        .ifPresent(u -> rows.add(Map.entry("Check unit", u + drift(s) + part(study, u))));
    if (!s.sound().equals(SoundContent.defaults())) {
      rows.add(Map.entry("Captures that are sound files", sound(s.sound())));
    }
    rows.add(Map.entry("Seed of random draws", Long.toString(s.seed())));
    return Sheet.of("Settings in force", rows)
        .words("Setting", Map.Entry::getKey)
        .words("Value", Map.Entry::getValue);
  }

  /** A limit in words: one number, or its steps. */
  public static String limit(DbLimit limit) {
    if (limit.steps().size() == 1) {
      return Numbers.fixed(limit.steps().get(0).db(), 1) + " dB";
    }
    DbLimit.Step first = limit.steps().get(0);
    return Numbers.fixed(first.db(), 1)
        + " dB at first, "
        + limit.steps().stream()
            .skip(1)
            .map(s -> Numbers.fixed(s.db(), 1) + " dB from " + Numbers.hertz(s.fromHz()))
            .collect(Collectors.joining(", "));
  }

  private static String bands(Settings s) {
    return "1/"
        + s.grid().perOctave()
        + " octave, "
        + s.grid().size()
        + " bands from "
        + Numbers.hertz(s.grid().lowerHz())
        + " to "
        + Numbers.hertz(s.grid().upperHz());
  }

  /** What sound files hold, in words. */
  static String sound(SoundContent content) {
    return content
            .sweep()
            .map(
                sweep ->
                    "recordings of a sweep from "
                        + Numbers.hertz(sweep.fromHz())
                        + " to "
                        + Numbers.hertz(sweep.toHz())
                        + " in "
                        + Numbers.fixed(sweep.seconds(), 2)
                        + " s")
            .orElse("impulse responses")
        + ", window from "
        + Numbers.fixed(content.beforeOnsetMs(), 1)
        + " ms before to "
        + Numbers.fixed(content.window().lengthMs(), 1)
        + " ms after the onset, ends of "
        + Numbers.fixed(content.window().fadeMs(), 1)
        + " ms";
  }

  private static String range(DeclaredZone zone) {
    return Numbers.hertz(zone.fromHz()) + " to " + Numbers.hertz(zone.toHz());
  }

  private static String percent(double share) {
    return Numbers.fixed(100 * share, 1) + " %";
  }

  private static String part(Study study, String checkUnit) {
    boolean check =
        study.units().stream()
            .anyMatch(u -> u.name().equals(checkUnit) && u.role() == Unit.Role.CHECK);
    return check ? "; it has no part in the transfer" : "; it is also used like any other unit";
  }

  private static String drift(Settings s) {
    return s.sessions().drift() == DriftMode.CORRECT
        ? "; sessions are corrected for its drift"
        : "; its drift is reported only";
  }

  private static String screening(ScreeningMode mode) {
    return mode == ScreeningMode.EXCLUDE
        ? "captures the rules do not believe are left out"
        : "captures the rules doubt are reported, and used";
  }
}
