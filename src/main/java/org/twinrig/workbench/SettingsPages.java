package org.twinrig.workbench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.twinrig.band.BandGrid;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.response.Anchor;
import org.twinrig.study.DeclaredZone;
import org.twinrig.study.Settings;
import org.twinrig.study.StudyText;

/** What the study is told, to be changed in study.yaml itself. */
final class SettingsPages {
  private static final int EMPTY_ROWS = 2;
  private static final int MOST_ROWS = 60;

  private final StudySession session;
  private final Pages pages;

  SettingsPages(StudySession session, Pages pages) {
    this.session = session;
    this.pages = pages;
  }

  /** A key of study.yaml, and its value in force when the file does not name it. */
  private record Key(
      String name, String label, String hint, String standard, List<String> choices) {
    Key(String name, String label, String hint, String standard) {
      this(name, label, hint, standard, List.of());
    }

    /** A key whose value is one of a few words. */
    static <E extends Enum<E>> Key of(String name, String label, String hint, E standard) {
      List<String> words =
          Arrays.stream(standard.getDeclaringClass().getEnumConstants())
              .map(SettingsPages::word)
              .toList();
      return new Key(name, label, hint, word(standard), words);
    }
  }

  private static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT);
  }

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
            "how finely the range is divided",
            Integer.toString(s.grid().perOctave()),
            BandGrid.SUPPORTED_PER_OCTAVE.stream().sorted().map(n -> Integer.toString(n)).toList()),
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
        Key.of(
            "model",
            "Prediction of single units",
            "auto: the window only in bands where it gains; offset: the mean transfer of the kind;"
                + " window: the neighbouring bands of the old graph; average: all of them, weighted",
            s.model()),
        Key.of(
            "drift",
            "Drift of the check unit",
            "report: it is told, and no capture is changed; correct: it is taken out of the captures"
                + " of its session, which needs a check_unit in study.yaml",
            s.sessions().drift()),
        Key.of(
            "screening.apply",
            "Screening",
            "suggest: doubts are told; exclude: lost seals and odd seatings are left out; copies always",
            s.screening()));
  }

  Response settings(Request request) throws IOException {
    Snapshot snapshot =
        session.snapshot(); // before the text: a page that is older than it is refused later
    Settings s = snapshot.study().settings();
    StudyText yaml = session.yaml();
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
    return Pages.fill("settings.jte", Map.of("view", view(snapshot, List.of(), fields, zones)));
  }

  Response change(Request request) throws Exception {
    Snapshot snapshot = session.snapshot();
    StudyText yaml = session.yaml();
    StudyText changed = yaml;
    List<String> words = new ArrayList<>();
    Settings s = snapshot.study().settings();
    for (Key key : keys(s)) {
      String given = request.text(key.name());
      if (request.fields().containsKey(key.name()) && !given.equals(shown(key, yaml))) {
        changed = changed.with(key.name(), given);
        words.add(key.name() + " " + (given.isEmpty() ? "(empty)" : given));
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
          keys(s).stream().map(k -> field(k, request.text(k.name()))).toList();
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

  private static SettingsView.Field field(Key key, String value) {
    List<String> choices = new ArrayList<>(key.choices());
    if (!choices.isEmpty() && !choices.contains(value)) {
      choices.add(value); // as study.yaml writes it, or as it was sent: nothing else is put there
    }
    return new SettingsView.Field(key.name(), key.label(), value, key.hint(), choices);
  }

  private static String shown(Key key, StudyText yaml) {
    return yaml.value(key.name()).orElse(key.standard());
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
