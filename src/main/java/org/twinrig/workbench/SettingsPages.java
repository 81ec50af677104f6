package org.twinrig.workbench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Anchor;
import org.twinrig.study.DeclaredZone;
import org.twinrig.study.Settings;
import org.twinrig.study.StudyText;
import org.twinrig.workbench.view.Frame;
import org.twinrig.workbench.view.SettingsView;

/** What the study is told, to be changed in study.yaml itself. */
final class SettingsPages {
  private static final int EMPTY_ROWS = 2;
  private static final int MOST_ROWS = 60;

  private final Book book;
  private final Pages pages;

  SettingsPages(Book book, Pages pages) {
    this.book = book;
    this.pages = pages;
  }

  /** A key of study.yaml, and its value in force when the file does not name it. */
  private record Key(String name, String label, String hint, String standard) {}

  private static List<Key> keys(Settings s) {
    return List.of(
        new Key(
            "anchor",
            "Anchor",
            "where levels are pinned: { from_hz: 300, to_hz: 1000 }, { at_hz: 1000 } or none",
            anchor(s.anchor())),
        new Key(
            "bands.per_octave",
            "Bands per octave",
            "1, 3, 6, 12, 24 or 48",
            Integer.toString(s.grid().perOctave())),
        new Key("bands.from_hz", "Lowest frequency", "Hz", "20"),
        new Key("bands.to_hz", "Highest frequency", "Hz", "20000"),
        new Key(
            "tolerance.reliable_db",
            "Reliable up to",
            "half-width of the prediction interval in dB",
            plain(s.tolerance().reliable().smallestDb())),
        new Key(
            "tolerance.caution_db",
            "Caution up to",
            "half-width in dB",
            plain(s.tolerance().caution().smallestDb())),
        new Key(
            "tolerance.equivalence_db",
            "Equivalent up to",
            "dB",
            plain(s.tolerance().equivalenceDb())),
        new Key("confidence", "Confidence", "a share, such as 0.95", plain(s.confidence())),
        new Key("min_units", "Fewest units of a kind", "3 or more", Integer.toString(s.minUnits())),
        new Key(
            "screening.apply",
            "Screening",
            "suggest: doubts are told; exclude: lost seals, odd seatings and copies are left out",
            s.screening().name().toLowerCase(Locale.ROOT)));
  }

  Answer settings(Ask ask) throws IOException {
    Leaf leaf = book.leaf(); // before the text: a page that is older than it is refused later
    Settings s = leaf.study().settings();
    StudyText yaml = book.yaml();
    List<SettingsView.Field> fields = new ArrayList<>();
    for (Key key : keys(s)) {
      fields.add(field(key, shown(key, yaml)));
    }
    List<SettingsView.ZoneRow> zones = new ArrayList<>();
    for (DeclaredZone zone : s.zones()) {
      zones.add(
          new SettingsView.ZoneRow(
              zones.size(), zone.name(), zone.fixture(), plain(zone.fromHz()), plain(zone.toHz())));
    }
    return Answer.page(pages.fill("settings.jte", view(leaf, List.of(), fields, zones)));
  }

  Answer change(Ask ask) throws Exception {
    Leaf leaf = book.leaf();
    StudyText yaml = book.yaml();
    StudyText changed = yaml;
    List<String> words = new ArrayList<>();
    Settings s = leaf.study().settings();
    for (Key key : keys(s)) {
      String given = ask.text(key.name());
      if (ask.fields().containsKey(key.name()) && !given.equals(shown(key, yaml))) {
        changed = changed.with(key.name(), given);
        words.add(key.name() + " " + (given.isEmpty() ? "(empty)" : given));
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
      return Answer.seeOther("/study");
    } catch (UnusableInput e) {
      List<SettingsView.Field> fields =
          keys(s).stream().map(k -> field(k, ask.text(k.name()))).toList();
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
        pages.frame(book, leaf, Frame.Part.SETTINGS, "Settings", "/settings"),
        problems,
        fields,
        rows,
        List.of(leaf.study().from().name(), leaf.study().to().name()));
  }

  private static SettingsView.Field field(Key key, String value) {
    return new SettingsView.Field(key.name(), key.label(), value, key.hint());
  }

  private static String shown(Key key, StudyText yaml) {
    return yaml.value(key.name()).orElse(key.standard());
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
            .map(z -> List.of(z.name(), z.fixture(), plain(z.fromHz()), plain(z.toHz())))
            .toList());
  }

  private static String item(SettingsView.ZoneRow row) {
    return StudyText.group(
        List.of(
            "name",
            row.name(),
            "fixture",
            row.fixture(),
            "from_hz",
            row.fromHz(),
            "to_hz",
            row.toHz()));
  }

  private static String anchor(Anchor anchor) {
    if (anchor instanceof Anchor.Range range) {
      return "{ from_hz: " + plain(range.fromHz()) + ", to_hz: " + plain(range.toHz()) + " }";
    }
    return anchor instanceof Anchor.Frequency at ? "{ at_hz: " + plain(at.hz()) + " }" : "none";
  }

  /** The shortest decimal of a number. */
  private static String plain(double value) {
    return new java.math.BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
  }
}
