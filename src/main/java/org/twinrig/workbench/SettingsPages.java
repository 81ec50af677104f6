package org.twinrig.workbench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.DeclaredZone;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.study.StudyText;

/** What the study is told, to be changed in study.yaml itself. */
final class SettingsPages {
  private static final List<Setting.Field> FIELDS =
      Setting.ALL.stream().flatMap(setting -> setting.fields().stream()).toList();
  private static final int EMPTY_ROWS = 2;
  private static final int MOST_ROWS = 60;

  private final StudySession session;
  private final Pages pages;

  SettingsPages(StudySession session, Pages pages) {
    this.session = session;
    this.pages = pages;
  }

  Response settings(Request request) throws IOException {
    Snapshot snapshot =
        session.snapshot(); // before the text: a page that is older than it is refused later
    Settings s = snapshot.study().settings();
    StudyText yaml = session.yaml();
    List<SettingsView.Field> fields = new ArrayList<>();
    for (Setting.Field field : FIELDS) {
      fields.add(view(field, shown(field, yaml, s)));
    }
    List<SettingsView.ZoneRow> zones = new ArrayList<>();
    for (DeclaredZone zone : s.zones()) {
      zones.add(
          new SettingsView.ZoneRow(
              zones.size(),
              zone.name(),
              zone.fixture(),
              StudyText.flow(zone.fromHz()),
              StudyText.flow(zone.toHz())));
    }
    return Pages.fill("settings.jte", Map.of("view", view(snapshot, List.of(), fields, zones)));
  }

  Response change(Request request) throws Exception {
    Snapshot snapshot = session.snapshot();
    StudyText yaml = session.yaml();
    StudyText changed = yaml;
    List<String> words = new ArrayList<>();
    Settings s = snapshot.study().settings();
    for (Setting.Field field : FIELDS) {
      String given = request.text(field.key());
      if (request.fields().containsKey(field.key()) && !given.equals(shown(field, yaml, s))) {
        changed = changed.with(field.key(), given);
        words.add(field.key() + " " + (given.isEmpty() ? "(empty)" : given));
      }
    }
    List<SettingsView.ZoneRow> rows = rows(request);
    if (request.fields().containsKey("zone-0-name") && !same(rows, s.zones())) {
      changed = changed.withList("zones", rows.stream().map(SettingsPages::item).toList());
      words.add("zones");
    }
    try {
      session.settle(
          request.number("revision"),
          changed,
          "Settings changed: " + String.join(", ", words) + ".");
      return Response.seeOther("./study");
    } catch (UnusableInput e) {
      List<SettingsView.Field> fields =
          FIELDS.stream().map(f -> view(f, request.text(f.key()))).toList();
      List<String> problems = e.problems().stream().map(Problem::text).toList();
      return Pages.fill(
          400, "settings.jte", Map.of("view", view(snapshot, problems, fields, rows)));
    }
  }

  private SettingsView view(
      Snapshot snapshot,
      List<String> problems,
      List<SettingsView.Field> fields,
      List<SettingsView.ZoneRow> zones)
      throws IOException {
    List<SettingsView.ZoneRow> rows = new ArrayList<>(zones);
    for (int k = 0; k < EMPTY_ROWS; k++) {
      rows.add(new SettingsView.ZoneRow(rows.size(), "", "", "", ""));
    }
    return new SettingsView(
        pages.frame(snapshot, Frame.Part.SETTINGS, "Settings", "./settings"),
        problems,
        fields,
        rows,
        List.of(snapshot.study().from().name(), snapshot.study().to().name()));
  }

  private static SettingsView.Field view(Setting.Field field, String value) {
    List<String> choices = new ArrayList<>(field.choices());
    if (!choices.isEmpty() && !choices.contains(value)) {
      choices.add(value); // as study.yaml writes it, or as it was sent: nothing else is put there
    }
    return new SettingsView.Field(field.key(), field.label(), value, field.hint(), choices);
  }

  private static String shown(Setting.Field field, StudyText yaml, Settings inForce) {
    return yaml.value(field.key()).orElseGet(() -> field.text(inForce));
  }

  /** Rows in which anything stands; what is missing is for the reader to say. */
  private static List<SettingsView.ZoneRow> rows(Request request) {
    List<SettingsView.ZoneRow> rows = new ArrayList<>();
    for (int k = 0; k < MOST_ROWS; k++) {
      String name = request.text("zone-" + k + "-name");
      String from = request.text("zone-" + k + "-from");
      String to = request.text("zone-" + k + "-to");
      if (!(name + from + to).isEmpty()) {
        rows.add(
            new SettingsView.ZoneRow(
                rows.size(), name, request.text("zone-" + k + "-fixture"), from, to));
      }
    }
    return rows;
  }

  private static boolean same(List<SettingsView.ZoneRow> rows, List<DeclaredZone> zones) {
    List<List<String>> given =
        rows.stream().map(r -> List.of(r.name(), r.fixture(), r.fromHz(), r.toHz())).toList();
    return given.equals(
        zones.stream()
            .map(
                z ->
                    List.of(
                        z.name(),
                        z.fixture(),
                        StudyText.flow(z.fromHz()),
                        StudyText.flow(z.toHz())))
            .toList());
  }

  private static String item(SettingsView.ZoneRow row) {
    Map<String, String> zone = new LinkedHashMap<>();
    zone.put("name", row.name());
    zone.put("fixture", row.fixture());
    zone.put("from_hz", row.fromHz());
    zone.put("to_hz", row.toHz());
    return StudyText.flow(zone);
  }
}
