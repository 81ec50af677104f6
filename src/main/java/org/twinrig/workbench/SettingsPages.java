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
import org.twinrig.workbench.view.Frame;
import org.twinrig.workbench.view.SettingsView;

/** What the study is told, to be changed in study.yaml itself. */
final class SettingsPages {
  private static final List<Setting.Field> FIELDS =
      Setting.ALL.stream().flatMap(setting -> setting.fields().stream()).toList();
  private static final int EMPTY_ROWS = 2;
  private static final int MOST_ROWS = 60;

  private final Book book;
  private final Pages pages;

  SettingsPages(Book book, Pages pages) {
    this.book = book;
    this.pages = pages;
  }

  Answer settings(Ask ask) throws IOException {
    Leaf leaf = book.leaf(); // before the text: a page that is older than it is refused later
    Settings s = leaf.study().settings();
    StudyText yaml = book.yaml();
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
    return Answer.page(pages.fill("settings.jte", view(leaf, List.of(), fields, zones)));
  }

  Answer change(Ask ask) throws Exception {
    Leaf leaf = book.leaf();
    StudyText yaml = book.yaml();
    StudyText changed = yaml;
    List<String> words = new ArrayList<>();
    Settings s = leaf.study().settings();
    for (Setting.Field field : FIELDS) {
      String given = ask.text(field.key());
      if (ask.fields().containsKey(field.key()) && !given.equals(shown(field, yaml, s))) {
        changed = changed.with(field.key(), given);
        words.add(field.key() + " " + (given.isEmpty() ? "(empty)" : given));
      }
    }
    List<SettingsView.ZoneRow> rows = rows(ask);
    if (ask.fields().containsKey("zone-0-name") && !same(rows, s.zones())) {
      changed = changed.withList("zones", rows.stream().map(SettingsPages::item).toList());
      words.add("zones");
    }
    try {
      book.settle(
          ask.number("revision"), changed, "Settings changed: " + String.join(", ", words) + ".");
      return Answer.seeOther("./study");
    } catch (UnusableInput e) {
      List<SettingsView.Field> fields =
          FIELDS.stream().map(f -> view(f, ask.text(f.key()))).toList();
      List<String> problems = e.problems().stream().map(Problem::text).toList();
      return Answer.page(400, pages.fill("settings.jte", view(leaf, problems, fields, rows)));
    }
  }

  private SettingsView view(
      Leaf leaf,
      List<String> problems,
      List<SettingsView.Field> fields,
      List<SettingsView.ZoneRow> zones)
      throws IOException {
    List<SettingsView.ZoneRow> rows = new ArrayList<>(zones);
    for (int k = 0; k < EMPTY_ROWS; k++) {
      rows.add(new SettingsView.ZoneRow(rows.size(), "", "", "", ""));
    }
    return new SettingsView(
        pages.frame(book, leaf, Frame.Part.SETTINGS, "Settings", "./settings"),
        problems,
        fields,
        rows,
        List.of(leaf.study().from().name(), leaf.study().to().name()));
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
  private static List<SettingsView.ZoneRow> rows(Ask ask) {
    List<SettingsView.ZoneRow> rows = new ArrayList<>();
    for (int k = 0; k < MOST_ROWS; k++) {
      String name = ask.text("zone-" + k + "-name");
      String from = ask.text("zone-" + k + "-from");
      String to = ask.text("zone-" + k + "-to");
      if (!(name + from + to).isEmpty()) {
        rows.add(
            new SettingsView.ZoneRow(
                rows.size(), name, ask.text("zone-" + k + "-fixture"), from, to));
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
