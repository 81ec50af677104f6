package org.twinrig.study;

import java.nio.file.Path;
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
  }

  /**
   * Reads a study whose files lie around it.
   *
   * @param studyFolderOrYaml the folder that holds study.yaml, or the yaml file itself
   * @return as with data roots that are confirmed
   * @throws UnusableInput likewise, and when the study's data root would have to be confirmed
   */
  public static Findings<Study> read(Path studyFolderOrYaml) throws UnusableInput {
    return read(studyFolderOrYaml, List.of());
  }

  /**
   * Reads a study.
   *
   * @param studyFolderOrYaml the folder that holds study.yaml, or the yaml file itself
   * @param dataRoots folders that the study's data root may be or lie in, as whoever runs the study
   *     confirms; without {@code data_root} in study.yaml the closest of them that holds the study
   *     is its data root
   * @return the study with the sound rows of its tables, and a problem for every other row
   * @throws UnusableInput with every fault of study.yaml; or, when that is sound, with every fault
   *     of the tables' headers; or when no unit or no capture is left
   */
  public static Findings<Study> read(Path studyFolderOrYaml, List<Path> dataRoots)
      throws UnusableInput {
    return new StudyReader(Declaration.read(StudyPlace.of(studyFolderOrYaml, dataRoots))).study();
  }

  private Findings<Study> study() throws UnusableInput {
    Declaration.Files files = declared.files();
    Optional<LabTable> unitsTable = open(files.units(), LabTable.UNITS);
    Optional<LabTable> sessionsTable =
        files.sessions().flatMap(named -> open(named, SessionsTable.COLUMNS));
    Optional<LabTable> capturesTable = open(files.captures(), LabTable.CAPTURES);
    stopIf(!problems.isEmpty());

    Roster<String> fixtures =
        Roster.of("fixture", declared.place().source(), declared.fixtures(), Function.identity());
    SessionRules rules = declared.settings().sessions();
    List<Unit> units = kept(UnitsTable.read(unitsTable.orElseThrow(), rules.checkUnit()));
    stopIfNone(units.isEmpty(), files.units().name(), "unit");
    List<Session> sessions = sessionsTable.map(t -> sessions(t, fixtures)).orElse(List.of());
    CheckUnit checkUnit = new CheckUnit(declared.place().source(), files.units().name(), rules);
    problems.addAll(checkUnit.notes(units));
    Optional<Problem> missing = checkUnit.missing(units);
    missing.ifPresent(problems::add);
    stopIf(missing.isPresent());
    CapturesTable.References known =
        new CapturesTable.References(
            roster("unit", unitsTable.orElseThrow(), units, Unit::name),
            fixtures,
            sessionsTable.map(table -> roster("session", table, sessions, Session::name)));
    CapturesTable reader = new CapturesTable(known, declared.dataRoot(), files.captures().folder());
    List<CaptureEntry> entries = ofStudy(kept(reader.read(capturesTable.orElseThrow())));
    stopIfNone(entries.isEmpty(), files.captures().name(), "capture");
    problems.addAll(new Participation(files.units().name(), names(), entries).notes(units));
    problems.addAll(KindNames.notes(files.units().name(), units));
    return new Findings<>(study(units, entries, sessions), inOrder());
  }

  private Study study(List<Unit> units, List<CaptureEntry> entries, List<Session> sessions) {
    Declaration.Files files = declared.files();
    return new Study(
        declared.place().folder(),
        declared.title(),
        declared.from(),
        declared.to(),
        units,
        entries,
        sessions,
        files.catalogue().map(Declaration.Named::path),
        declared.settings(),
        files.captures().folder(),
        inputs(),
        declared.references().entrySet().stream()
            .collect(Collectors.toMap(Map.Entry::getKey, e -> e.getValue().reference())));
  }

  private List<Path> inputs() {
    Declaration.Files files = declared.files();
    List<Path> inputs = new ArrayList<>();
    inputs.add(declared.place().realFolder().resolve(declared.place().source()));
    inputs.add(files.units().path());
    inputs.add(files.captures().path());
    files.sessions().map(Declaration.Named::path).ifPresent(inputs::add);
    declared.references().values().forEach(found -> inputs.add(found.path()));
    return inputs;
  }

  private List<Session> sessions(LabTable table, Roster<String> fixtures) {
    List<Session> sessions =
        kept(SessionsTable.read(table, fixtures, declared.settings().sessions()));
    CalibratorCheck.of(declared.settings())
        .ifPresent(check -> problems.addAll(check.notes(table.source(), sessions)));
    return sessions;
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
    return Roster.of(noun, table.source(), sound, name).withListed(table.cells(noun));
  }

  private List<String> names() {
    return List.of(declared.from().name(), declared.to().name());
  }

  /** Leaves out the captures on other fixtures, and says so once for each. */
  private List<CaptureEntry> ofStudy(List<CaptureEntry> entries) {
    Map<String, List<CaptureEntry>> others = new LinkedHashMap<>();
    entries.stream()
        .filter(entry -> !names().contains(entry.fixture()))
        .forEach(e -> others.computeIfAbsent(e.fixture(), f -> new ArrayList<>()).add(e));
    others.forEach(
        (fixture, left) ->
            problems.add(
                Problem.note(
                    declared.files().captures().name(),
                    left.get(0).line(),
                    Numbers.count(left.size(), "capture", "captures")
                        + " on `"
                        + fixture
                        + "` left out: the study goes from `"
                        + names().get(0)
                        + "` to `"
                        + names().get(1)
                        + "`")));
    return entries.stream().filter(entry -> names().contains(entry.fixture())).toList();
  }

  private void stopIfNone(boolean none, String source, String noun) throws UnusableInput {
    if (none) {
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
    Declaration.Files files = declared.files();
    List<String> order =
        Stream.of(Optional.of(files.units()), files.sessions(), Optional.of(files.captures()))
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
