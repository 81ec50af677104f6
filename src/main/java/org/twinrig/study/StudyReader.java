package org.twinrig.study;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.capture.Session;
import org.twinrig.capture.Unit;
import org.twinrig.intake.LabTable;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Findings;
import org.twinrig.problem.Problem;
import org.twinrig.problem.Repeated;
import org.twinrig.problem.UnusableInput;

/** Reads what the lab declared: study.yaml and the tables it names, but no capture file yet. */
public final class StudyReader {
  private final Declaration declared;
  private final List<Problem> problems = new ArrayList<>();

  private StudyReader(Declaration declared) {
    this.declared = declared;
    problems.addAll(declared.notes());
  }

  /** Reads a study whose data root needs no confirmation; else as with those confirmed. */
  public static Findings<Study> read(Path studyFolderOrYaml) throws UnusableInput {
    return read(studyFolderOrYaml, List.of());
  }

  /**
   * Reads a study, by its folder or its yaml file: with the sound rows of its tables, and a problem
   * for every other row.
   *
   * @param dataRoots folders that the study's data root may be or lie in, as whoever runs the study
   *     confirms; without {@code data_root} in study.yaml the closest of them that holds the study
   *     is its data root
   * @throws UnusableInput with every fault of study.yaml; or, when that is sound, with every fault
   *     of the tables' headers; or when no unit or no capture is left
   */
  public static Findings<Study> read(Path studyFolderOrYaml, List<Path> dataRoots)
      throws UnusableInput {
    return new StudyReader(Declaration.read(StudyPlace.of(studyFolderOrYaml, dataRoots))).study();
  }

  private Findings<Study> study() throws UnusableInput {
    Optional<LabTable> unitsTable = open(declared.units(), LabTable.UNITS);
    Optional<LabTable> sessionsTable =
        declared.sessions().flatMap(named -> open(named, SessionsTable.COLUMNS));
    Optional<LabTable> capturesTable = open(declared.captures(), LabTable.CAPTURES);
    stopIf(problems.stream().anyMatch(p -> p.kind() == Problem.Kind.FATAL));

    String yaml = declared.place().source();
    Roster<String> fixtures =
        Roster.of("fixture", yaml, declared.fixtures(), Function.identity(), List.of());
    Settings settings = declared.settings();
    List<Unit> units = kept(UnitsTable.read(unitsTable.orElseThrow(), settings.checkUnit()));
    stopIfNone(units, declared.units().name(), "unit");
    List<Session> sessions = sessionsTable.map(t -> sessions(t, fixtures)).orElse(List.of());
    UnitsTable notes = new UnitsTable(declared.units().name(), units);
    problems.addAll(notes.onRoles(settings));
    Optional<Problem> missing = notes.missing(yaml, settings.checkUnit());
    missing.ifPresent(problems::add);
    stopIf(missing.isPresent());
    CapturesTable reader =
        new CapturesTable(
            roster("unit", unitsTable.orElseThrow(), units, Unit::name),
            fixtures,
            sessionsTable.map(table -> roster("session", table, sessions, Session::name)),
            declared.dataRoot(),
            declared.captures().folder());
    List<CaptureEntry> entries =
        leftOut(
            ofStudy(kept(reader.read(capturesTable.orElseThrow()))),
            unitsTable.orElseThrow().leftOut("unit"),
            sessionsTable.map(t -> t.leftOut("session")).orElse(Map.of()));
    stopIfNone(entries, declared.captures().name(), "capture");
    problems.addAll(notes.onParticipation(names(), entries));
    problems.addAll(notes.onKinds());
    problems.addAll(notes.onSearch(yaml, settings));
    Study study = study(units, entries, sessions);
    sessionsTable.ifPresent(t -> problems.addAll(CalibratorCheck.notes(t.source(), study)));
    notes.onImpedance(sessions).ifPresent(problems::add);
    stopIfOver(study, yaml);
    return new Findings<>(study, inOrder());
  }

  /** Leaves out what belongs to units and sessions that are left out. */
  private static List<CaptureEntry> leftOut(
      List<CaptureEntry> entries, Map<String, String> units, Map<String, String> sessions) {
    return entries.stream()
        .map(
            e ->
                units.containsKey(e.unit())
                    ? e.leftOut("unit left out: " + units.get(e.unit()))
                    : e)
        .map(
            e ->
                sessions.containsKey(e.session())
                    ? e.leftOut("session left out: " + sessions.get(e.session()))
                    : e)
        .toList();
  }

  /** A study that ends before its own sessions do is a slip of the pen. */
  private void stopIfOver(Study study, String yaml) throws UnusableInput {
    Optional<LocalDate> until = study.settings().get(Setting.VALID_UNTIL);
    Optional<LocalDate> last = study.days().map(Study.Days::last);
    if (until.isPresent() && last.isPresent() && until.get().isBefore(last.get())) {
      String what = "`valid_until` is %s, before the study's last session on %s";
      String remedy = "write the last day for which the study is to be used, or mend that date";
      problems.add(Problem.fatal(yaml, 0, what.formatted(until.get(), last.get()), remedy));
      stopIf(true);
    }
  }

  private Study study(List<Unit> units, List<CaptureEntry> entries, List<Session> sessions) {
    return new Study(
        declared.place().folder(),
        declared.title(),
        declared.from(),
        declared.to(),
        units,
        entries,
        sessions,
        declared.catalogue().map(Declaration.Named::path),
        declared.settings(),
        declared.captures().folder(),
        inputs(),
        declared.references());
  }

  private List<Path> inputs() {
    List<Path> inputs = new ArrayList<>();
    Path folder = declared.place().realFolder();
    inputs.add(folder.resolve(declared.place().source()));
    inputs.add(declared.units().path());
    inputs.add(declared.captures().path());
    declared.sessions().map(Declaration.Named::path).ifPresent(inputs::add);
    declared.references().values().forEach(curve -> inputs.add(folder.resolve(curve.file())));
    return inputs;
  }

  private List<Session> sessions(LabTable table, Roster<String> fixtures) {
    return kept(new SessionsTable(fixtures, declared.settings().microphoneDriftDb()).read(table));
  }

  private Optional<LabTable> open(Declaration.Named file, LabTable.Columns columns) {
    try {
      return Optional.of(LabTable.of(file.path(), file.name(), columns));
    } catch (UnusableInput e) {
      problems.addAll(e.problems());
      return Optional.empty();
    }
  }

  private <T> T kept(Findings<T> findings) {
    problems.addAll(Repeated.toldOnce(findings.problems()));
    return findings.value();
  }

  private static <T> Roster<T> roster(
      String noun, LabTable table, List<T> sound, Function<T, String> name) {
    return Roster.of(noun, table.source(), sound, name, table.cells(noun));
  }

  private List<String> names() {
    return List.of(declared.from().name(), declared.to().name());
  }

  /** Leaves out the captures on other fixtures, and says so once for each. */
  private List<CaptureEntry> ofStudy(List<CaptureEntry> entries) {
    Map<String, List<CaptureEntry>> byFixture =
        entries.stream()
            .collect(
                Collectors.groupingBy(
                    CaptureEntry::fixture, LinkedHashMap::new, Collectors.toList()));
    byFixture.keySet().removeAll(names());
    byFixture.forEach(
        (fixture, left) ->
            problems.add(
                Problem.note(
                    declared.captures().name(),
                    left.get(0).line(),
                    String.format(
                        "%s on `%s` left out: the study goes from `%s` to `%s`",
                        Numbers.count(left.size(), "capture", "captures"),
                        fixture,
                        declared.from().name(),
                        declared.to().name()))));
    return entries.stream().filter(entry -> names().contains(entry.fixture())).toList();
  }

  private void stopIfNone(List<?> left, String source, String noun) throws UnusableInput {
    if (left.isEmpty()) {
      problems.add(
          Problem.fatal(source, 0, "no " + noun + " is left to work with", "add or mend the rows"));
      stopIf(true);
    }
  }

  private void stopIf(boolean unusable) throws UnusableInput {
    if (unusable) {
      throw new UnusableInput(inOrder());
    }
  }

  /** Table by table in the order they are read, line by line. */
  private List<Problem> inOrder() {
    List<String> order =
        Stream.of(
                Optional.of(declared.units()),
                declared.sessions(),
                Optional.of(declared.captures()))
            .flatMap(Optional::stream)
            .map(Declaration.Named::name)
            .toList();
    // What stops everything is told after what led to it.
    Comparator<Problem> byCause = Comparator.comparing(p -> p.kind() == Problem.Kind.FATAL);
    Comparator<Problem> byTable = Comparator.comparingInt(p -> order.indexOf(p.source()));
    return problems.stream()
        .sorted(byCause.thenComparing(byTable).thenComparingInt(Problem::line))
        .toList();
  }
}
