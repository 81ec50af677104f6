package org.twinrig.workbench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.DeclaredZone;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.study.StudyText;

/**
 * What the study is told, to be changed in study.yaml itself: by fields, or as the whole text, for
 * every key that has no field of its own. What the reader refuses is shown and not written.
 */
public record SettingsPages(Pages pages) {
  private static final int EMPTY_ROWS = 2;
  private static final int MOST_ROWS = 60;

  public static List<Setting.Field> fields() {
    return Setting.ALL.stream().flatMap(setting -> setting.fields().stream()).toList();
  }

  /** A declared zone and the fixture it belongs to, its ends as they are written. */
  public record ZoneRow(String name, String fixture, String fromHz, String toHz) {
    private static final ZoneRow EMPTY = new ZoneRow("", "", "", "");

    private static ZoneRow of(DeclaredZone zone) {
      return new ZoneRow(
          zone.name(), zone.fixture(), StudyText.flow(zone.fromHz()), StudyText.flow(zone.toHz()));
    }

    private String item() {
      Map<String, String> zone = new LinkedHashMap<>();
      zone.put("name", name);
      zone.put("fixture", fixture);
      zone.put("from_hz", fromHz);
      zone.put("to_hz", toHz);
      return StudyText.flow(zone);
    }
  }

  Response settings(Request request) throws IOException {
    Frame frame = frame("Settings", "./settings");
    Settings settings = frame.snapshot().study().settings();
    StudyText yaml = pages.session.yaml();
    Map<String, String> values = new LinkedHashMap<>();
    fields().forEach(field -> values.put(field.key(), shown(field, yaml, settings)));
    return filled(200, frame, List.of(), values, zones(settings));
  }

  /** Before the text is looked at: a page that is older than it is refused later. */
  private Frame frame(String title, String here) throws IOException {
    return pages.frame(Frame.Part.SETTINGS, title, here);
  }

  Response change(Request request) throws Exception {
    Frame frame = frame("Settings", "./settings");
    Settings settings = frame.snapshot().study().settings();
    StudyText yaml = pages.session.yaml();
    StudyText changed = yaml;
    List<String> words = new ArrayList<>();
    Map<String, String> values = new LinkedHashMap<>();
    for (Setting.Field field : fields()) {
      String key = field.key();
      String given = request.text(key);
      values.put(key, given);
      if (request.fields().containsKey(key) && !given.equals(shown(field, yaml, settings))) {
        changed = changed.with(key, given);
        words.add(key + " " + (given.isEmpty() ? "(empty)" : given));
      }
    }
    List<ZoneRow> rows = rows(request);
    if (request.fields().containsKey("zone-0-name") && !rows.equals(zones(settings))) {
      changed = changed.withList("zones", rows.stream().map(ZoneRow::item).toList());
      words.add("zones");
    }
    try {
      String what = "Settings changed: " + String.join(", ", words) + ".";
      pages.session.settle(request.number("revision"), changed, what);
      return Response.seeOther("./study");
    } catch (UnusableInput e) {
      return filled(400, frame, e.problems(), values, rows);
    }
  }

  private static Response filled(
      int status,
      Frame frame,
      List<Problem> problems,
      Map<String, String> values,
      List<ZoneRow> zones) {
    List<ZoneRow> rows = new ArrayList<>(zones);
    rows.addAll(Collections.nCopies(EMPTY_ROWS, ZoneRow.EMPTY));
    return Pages.fill(
        status,
        "settings.jte",
        Map.of("frame", frame, "problems", problems, "values", values, "zones", rows));
  }

  private static String shown(Setting.Field field, StudyText yaml, Settings inForce) {
    return yaml.value(field.key()).orElseGet(() -> field.text(inForce));
  }

  private static List<ZoneRow> zones(Settings settings) {
    return settings.zones().stream().map(ZoneRow::of).toList();
  }

  /** Rows in which anything stands; what is missing is for the reader to say. */
  private static List<ZoneRow> rows(Request request) {
    List<ZoneRow> rows = new ArrayList<>();
    for (int k = 0; k < MOST_ROWS; k++) {
      String zone = "zone-" + k;
      ZoneRow row =
          new ZoneRow(
              request.text(zone + "-name"),
              request.text(zone + "-fixture"),
              request.text(zone + "-from"),
              request.text(zone + "-to"));
      if (!(row.name + row.fromHz + row.toHz).isEmpty()) {
        rows.add(row);
      }
    }
    return rows;
  }

  Response text(Request request) throws IOException {
    Frame frame = frame("Text of study.yaml", "./settings-text");
    return filled(200, frame, pages.session.yaml().text(), List.of());
  }

  Response changeText(Request request) throws Exception {
    String before = pages.session.yaml().text();
    String sent = request.raw("text").replace("\r\n", "\n");
    // A browser sends its own line ends; the file keeps those it has.
    String lines = before.contains("\r\n") ? sent.replace("\n", "\r\n") : sent;
    boolean same = before.replace("\r\n", "\n").equals(sent);
    try {
      pages.session.settle(
          request.number("revision"),
          new StudyText(same ? before : lines),
          "The text of study.yaml was edited.");
      return Response.seeOther("./study");
    } catch (UnusableInput e) {
      return filled(400, frame("Text of study.yaml", "./settings-text"), sent, e.problems());
    }
  }

  private Response filled(int status, Frame frame, String text, List<Problem> problems) {
    String yaml = pages.session.yamlName();
    return Pages.fill(
        status,
        "text.jte",
        Map.of("frame", frame, "text", text, "yaml", yaml, "problems", problems));
  }
}
