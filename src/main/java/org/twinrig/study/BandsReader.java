package org.twinrig.study;

import java.util.List;
import java.util.Optional;
import org.twinrig.band.BandGrid;
import org.twinrig.response.Anchor;

/** The keys {@code bands}, {@code anchor} and {@code publishing} of study.yaml. */
final class BandsReader {
  private static final List<String> KEYS = List.of("per_octave", "from_hz", "to_hz");
  private static final List<String> ANCHOR_KEYS = List.of("from_hz", "to_hz", "at_hz");
  private static final List<String> PUBLISHING_KEYS = List.of("from_hz", "to_hz", "lost_octaves");
  private static final String ANCHORS =
      "write `{ from_hz: 300, to_hz: 1000 }`, `{ at_hz: 1000 }` or `none`";

  private BandsReader() {}

  static Optional<Bands> bands(YamlValue value, Setting.Context so) {
    Optional<YamlGroup> group = value.group(KEYS);
    if (group.isEmpty()) {
      return Optional.empty();
    }
    Bands standard = Setting.BANDS.standard();
    int perOctave =
        group
            .get()
            .value("per_octave")
            .flatMap(BandsReader::perOctave)
            .orElse(standard.perOctave());
    // A misspelt end is not the standard one: nothing is concluded from the two together.
    if (group.get().misspelt("from_hz") || group.get().misspelt("to_hz")) {
      return Optional.of(new Bands(perOctave, standard.fromHz(), standard.toHz()));
    }
    Optional<Double> from = end(group.get(), "from_hz", standard.fromHz());
    Optional<Double> to = end(group.get(), "to_hz", standard.toHz());
    return FrequencyReader.range(value, from, to)
        .filter(range -> holdsBand(value, range, perOctave))
        .map(range -> new Bands(perOctave, range.fromHz(), range.toHz()));
  }

  static Optional<Anchor> anchor(YamlValue value, Setting.Context so) {
    if (!value.isGroup()) {
      return "none".equals(value.word()) ? Optional.of(new Anchor.None()) : value.refuse(ANCHORS);
    }
    int perOctave = so.before().get(Setting.BANDS).perOctave();
    return value.group(ANCHOR_KEYS).flatMap(group -> anchor(value, group, perOctave));
  }

  static Optional<PublishingRule> publishing(YamlValue value) {
    PublishingRule standard = PublishingRule.standard();
    Optional<YamlGroup> group = value.group(PUBLISHING_KEYS);
    return group.map(
        g ->
            new PublishingRule(
                FrequencyReader.range(
                        value,
                        hz(g, "from_hz", standard.compared().fromHz()),
                        hz(g, "to_hz", standard.compared().toHz()))
                    .orElse(standard.compared()),
                g.value("lost_octaves")
                    .flatMap(v -> v.number(NumberRange.OCTAVES))
                    .orElse(standard.lostOctaves())));
  }

  /** A frequency; the standard one also where a wrong one was refused. */
  private static Optional<Double> hz(YamlGroup group, String key, double standard) {
    return Optional.of(group.value(key).flatMap(FrequencyReader::hz).orElse(standard));
  }

  private static Optional<Anchor> anchor(YamlValue value, YamlGroup group, int perOctave) {
    boolean one = group.keys().equals(List.of("at_hz"));
    boolean range = group.keys().size() == 2 && group.value("at_hz").isEmpty();
    if (one) {
      return group.value("at_hz").flatMap(FrequencyReader::hz).map(Anchor.Frequency::new);
    }
    if (ANCHOR_KEYS.stream().anyMatch(group::misspelt)) {
      return Optional.empty(); // what is missing then stands there, and was told of
    }
    if (!range) {
      return value.problem(
          value.line(), "`anchor` is neither one frequency nor a range of two", ANCHORS);
    }
    Optional<Double> from = group.value("from_hz").flatMap(FrequencyReader::hz);
    Optional<Double> to = group.value("to_hz").flatMap(FrequencyReader::hz);
    return FrequencyReader.range(value, from, to)
        .filter(r -> holdsBand(value, r, perOctave))
        .map(r -> new Anchor.Range(r.fromHz(), r.toHz()));
  }

  private static Optional<Integer> perOctave(YamlValue value) {
    String remedy = "write 1, 3, 6, 12, 24 or 48";
    return value
        .whole(1, 48, remedy)
        .map(Long::intValue)
        .flatMap(
            n -> BandGrid.SUPPORTED_PER_OCTAVE.contains(n) ? Optional.of(n) : value.refuse(remedy));
  }

  private static Optional<Double> end(YamlGroup group, String key, double otherwise) {
    Optional<YamlValue> value = group.value(key);
    return value.isPresent() ? FrequencyReader.hz(value.get()) : Optional.of(otherwise);
  }

  private static boolean holdsBand(YamlValue owner, FrequencyRange range, int perOctave) {
    try {
      return BandGrid.covering(range.fromHz(), range.toHz(), perOctave).size() > 0;
    } catch (IllegalArgumentException tooNarrow) {
      owner.problem(
          owner.line(),
          "`" + owner.name() + "` holds no band of 1/" + perOctave + " octave",
          "widen the range, or use more bands per octave");
      return false;
    }
  }
}
