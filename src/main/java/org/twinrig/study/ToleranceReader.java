package org.twinrig.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.twinrig.internal.Numbers;

/** The key {@code tolerance} of study.yaml. */
final class ToleranceReader {
  private static final List<String> KEYS = List.of("reliable_db", "caution_db", "equivalence_db");
  private static final List<String> STEP_KEYS = List.of("from_hz", "db");
  private static final String TABLE =
      "write a number in dB, or a table such as `[{ from_hz: 20, db: 1.5 }, { from_hz: 4000, db: 2 }]`";

  private ToleranceReader() {}

  static Optional<Tolerance> tolerance(YamlValue value, Setting.Context so) {
    Optional<YamlGroup> group = value.group(KEYS);
    if (group.isEmpty()) {
      return Optional.empty();
    }
    Tolerance defaults = Setting.TOLERANCE.standard();
    double lowestHz = so.before().get(Setting.BANDS).fromHz(); // where every table has to begin
    DbLimit reliable = limit(group.get(), "reliable_db", lowestHz).orElse(defaults.reliable());
    DbLimit caution = limit(group.get(), "caution_db", lowestHz).orElse(defaults.caution());
    double equivalenceDb =
        group
            .get()
            .value("equivalence_db")
            .flatMap(ToleranceReader::db)
            .orElse(defaults.equivalenceDb());
    OptionalDouble amissHz = Tolerance.outOfOrderHz(reliable, caution);
    if (amissHz.isPresent()) {
      refuseOrder(
          group.get().value("caution_db").orElse(value), reliable, caution, amissHz.getAsDouble());
      return Optional.empty();
    }
    return Optional.of(new Tolerance(reliable, caution, equivalenceDb));
  }

  private static void refuseOrder(YamlValue at, DbLimit reliable, DbLimit caution, double hz) {
    at.problem(
        at.line(),
        "`tolerance.caution_db` is "
            + FrequencyReader.plain(caution.atHz(hz))
            + " dB at "
            + Numbers.hertz(hz)
            + ", but `reliable_db` is "
            + FrequencyReader.plain(reliable.atHz(hz))
            + " dB there",
        "caution must allow at least as much (where left out: 1.5 and 3 dB)");
  }

  private static Optional<DbLimit> limit(YamlGroup group, String key, double lowestHz) {
    return group
        .value(key)
        .flatMap(v -> v.isList() ? table(v, lowestHz) : db(v).map(DbLimit::everywhere));
  }

  private static Optional<DbLimit> table(YamlValue value, double lowestHz) {
    List<YamlValue> rows = value.list(TABLE).orElse(List.of());
    List<DbLimit.Step> steps = new ArrayList<>();
    for (YamlValue row : rows) {
      Optional<DbLimit.Step> step = step(row);
      if (step.isEmpty()) {
        return Optional.empty();
      }
      if (!steps.isEmpty() && step.get().fromHz() <= steps.get(steps.size() - 1).fromHz()) {
        return row.problem(
            row.line(),
            "`" + row.name() + "` does not rise in frequency",
            "sort the table by from_hz");
      }
      steps.add(step.get());
    }
    if (steps.isEmpty() || steps.get(0).fromHz() > lowestHz) {
      return value.problem(
          value.line(),
          "`" + value.name() + "` says nothing about the lowest bands",
          "begin the table at " + FrequencyReader.plain(lowestHz) + " Hz or below");
    }
    return Optional.of(new DbLimit(steps));
  }

  private static Optional<DbLimit.Step> step(YamlValue row) {
    Optional<YamlGroup> group = row.group(STEP_KEYS);
    Optional<Double> fromHz =
        group.flatMap(g -> g.required("from_hz", "from_hz: 20")).flatMap(FrequencyReader::hz);
    Optional<Double> db =
        group.flatMap(g -> g.required("db", "db: 1.5")).flatMap(ToleranceReader::db);
    return fromHz.isPresent() && db.isPresent()
        ? Optional.of(new DbLimit.Step(fromHz.get(), db.get()))
        : Optional.empty();
  }

  private static Optional<Double> db(YamlValue value) {
    return value.isGroup() || value.isList()
        ? value.refuse(TABLE)
        : value.number(NumberRange.LIMIT_DB);
  }
}
