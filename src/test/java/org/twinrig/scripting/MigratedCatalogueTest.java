package org.twinrig.scripting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.cli.Main;
import org.twinrig.report.table.CatalogueResults;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulationPlan;
import org.twinrig.translation.CatalogueRun;
import org.twinrig.translation.Decision;

/** A catalogue taken through by a script comes out as the command writes it. */
class MigratedCatalogueTest {
  private static final SimulationPlan PLAN =
      SimulationPlan.standard()
          .withKinds(SimulatedKind.CLOSED_OVER_EAR)
          .withUnitsPerKind(5)
          .withSeatings(2)
          .withCatalogueGraphs(12)
          .withAxis(new SimulationPlan.Axis(120, 10, 22_000))
          .withSeed(8);

  @TempDir static Path folder;
  private static Path study;
  private static Path table;
  private static StudyResult result;
  private static MigratedCatalogue catalogue;

  @BeforeAll
  static void migrateOnce() throws Exception {
    study = folder.resolve("study");
    PLAN.draw().writeTo(study);
    List<String> rows = new ArrayList<>(Files.readAllLines(study.resolve("catalogue.csv")));
    // One graph drawn smoothed, and one whose file is not there.
    rows.set(2, rows.get(2).replaceFirst("none$", "1/3"));
    rows.set(4, rows.get(4).replace("catalogue/g-004.csv", "catalogue/lost.csv"));
    table = study.resolve("changed.csv");
    Files.write(table, rows);
    result = LabStudy.read(study).analyse();
    catalogue = result.translation().migrate(table);
  }

  /** What is doubted is given, and a graph's decision knows it; an answer lifts it. */
  @Test
  void aDoubtedGraphIsToBeCheckedFirst() throws Exception {
    List<String> rows = new ArrayList<>(Files.readAllLines(study.resolve("catalogue.csv")));
    rows.set(3, rows.get(3).replace("g-003.csv", "g-001.csv"));
    Files.write(study.resolve("same.csv"), rows);
    MigratedCatalogue same = result.translation().migrate(study.resolve("same.csv"));
    assertTrue(
        same.doubts().stream().anyMatch(d -> d.doubt().equals("same as") && d.isOpen()),
        same.doubts()::toString);
    CatalogueRun.Line line = same.lines().get(2);
    assertEquals(line.decision(), same.graph(line.entry().graph()).decision());
    assertTrue(line.decision() == Decision.CHECK_FIRST || line.decision() == Decision.RE_MEASURE);
    assertEquals(result.outcome().doubts(), result.doubts());
    rows.replaceAll(row -> row + (row.startsWith("graph,") ? ",confirmed" : ",listed twice"));
    Files.write(study.resolve("answered.csv"), rows);
    assertTrue(
        result.translation().migrate(study.resolve("answered.csv")).lines().stream()
            .noneMatch(l -> l.decision() == Decision.CHECK_FIRST));
  }

  @Test
  void theCommandWritesTheSame() throws Exception {
    Path out = folder.resolve("out");
    int status =
        Main.run(
            new PrintWriter(new StringWriter()),
            new PrintWriter(new StringWriter()),
            "translate",
            study.toString(),
            "--catalogue",
            table.toString(),
            "--out",
            out.toString());

    Path summary = folder.resolve("summary.csv");
    CatalogueResults.SUMMARY.write(
        folder,
        new CatalogueRun.Outcome(
            catalogue.listed(), catalogue.lines(), java.util.Optional.empty(), List.of()));
    assertEquals(0, status);
    assertEquals(Files.readString(out.resolve("summary.csv")), Files.readString(summary));
    for (CatalogueRun.Line line : catalogue.lines()) {
      String graph = line.entry().graph();
      assertEquals(
          Files.readString(out.resolve("translated").resolve(graph + ".csv")),
          CatalogueResults.GRAPH.csv(catalogue.graph(graph).graph()),
          graph);
    }
  }

  @Test
  void nothingIsLost() {
    assertEquals(12, catalogue.listed());
    assertEquals(11, catalogue.lines().size());
    assertEquals(1, catalogue.problems().size());
    assertTrue(
        catalogue
            .problems()
            .get(0)
            .text()
            .startsWith(table + ":5: there is no file `catalogue/lost.csv`; "),
        catalogue.problems()::toString);
    int decided = 0;
    for (Decision decision : Decision.values()) {
      decided += catalogue.lines(decision).size();
    }
    assertEquals(11, decided);
    assertEquals(11, catalogue.decisions().stream().mapToInt(d -> d.graphs()).sum());
    assertEquals(
        "no graph `G-004` was re-expressed",
        assertThrows(IllegalArgumentException.class, () -> catalogue.graph("G-004")).getMessage());
  }

  /** A slip in the kind refuses no graph, and is told. */
  @Test
  void aKindTheStudyDoesNotHaveIsTold() throws Exception {
    Path slip = study.resolve("slip.csv");
    Files.write(slip, List.of("graph,unit,kind,file", "G-001,Ash 1,in-eer,catalogue/g-001.csv"));
    MigratedCatalogue migrated = result.translation().migrate(slip);
    assertEquals(1, migrated.lines().size());
    assertTrue(
        migrated.problems().get(0).text().contains(" has no kind `in-eer`, so 1 graph of it is"),
        migrated.problems()::toString);
  }

  @Test
  void theWorstStandFirst() {
    List<CatalogueRun.Line> again = catalogue.lines(Decision.RE_MEASURE);

    assertEquals(again.stream().sorted(CatalogueRun.Line.WORST_FIRST).toList(), again);
    for (int k = 1; k < again.size(); k++) {
      assertTrue(again.get(k - 1).octaves().lost() >= again.get(k).octaves().lost());
    }
  }

  @Test
  void aDecisionIsTheSameForOneGraphAndInACatalogue() {
    for (CatalogueRun.Line line : catalogue.lines()) {
      assertEquals(line.decision(), catalogue.graph(line.entry().graph()).decision());
    }
  }

  @Test
  void aGraphOfAnotherFormIsNotTakenAlone() {
    CatalogueRun.Line smoothed =
        catalogue.lines().stream()
            .filter(l -> l.entry().graph().equals("G-002"))
            .findFirst()
            .orElseThrow();

    assertEquals(
        "`G-002` is compensated, absolute or smoothed more than the captures; list it in a catalogue.csv and"
            + " migrate that",
        assertThrows(
                IllegalArgumentException.class,
                () ->
                    result
                        .translation()
                        .apply(
                            smoothed.entry(),
                            LabStudy.readCurve(study.resolve("catalogue/g-002.csv")).response()))
            .getMessage());
  }
}
