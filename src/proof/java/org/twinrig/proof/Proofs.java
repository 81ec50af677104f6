package org.twinrig.proof;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.twinrig.internal.AsideFile;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.study.PredictionModel;

/**
 * Makes the tables of the proofs anew, for maintainers: {@code TABLE} makes one as committed and
 * puts it in its place, {@code TABLE STUDIES SEED} prints it from other studies. Exit status: 0 the
 * promise is kept, 1 it is broken, 2 wrong usage.
 */
final class Proofs {
  private static final long SEED = 20_261_125;

  /** Of proofs of claims: no study of it was drawn before their limits were final. */
  private static final long CLAIMS_SEED = 20_261_201;

  /**
   * A committed table.
   *
   * @param name what to ask for
   * @param file where it lies in the folder of the studies
   * @param studies how many studies it is made of, for each case
   * @param seed of everything random
   */
  record Published<R>(String name, String file, int studies, long seed, Proof<R> proof) {
    /** Makes the table, tells what breaks the promise, and hands the table on. */
    private boolean make(Harness harness, Consumer<String> csv) {
      List<R> rows = proof.rows(harness);
      boolean kept = true;
      for (R row : rows) {
        for (String broken : proof.broken(row)) {
          String cells = String.join(",", proof.table().cells(row));
          harness.watcher().accept(cells + "\n  " + broken + ".");
          kept = false;
        }
      }
      harness.watcher().accept(kept ? "The promise is kept." : "The promise is broken.");
      csv.accept(proof.table().csv(rows));
      return kept;
    }
  }

  static final List<Published<?>> ALL =
      List.of(
          new Published<>(
              "intervals",
              "interval-proof/coverage.csv",
              200,
              SEED,
              IntervalProof.of(PredictionModel.AVERAGE, 6, 8, 16, 30)),
          new Published<>(
              "means",
              "interval-proof/means.csv",
              100,
              SEED,
              new MeanProof(List.of(6, 8, 16, 30), 1500)),
          new Published<>(
              "seals",
              "seal-proof/seals.csv",
              100,
              SEED,
              new SealProof(10, 4, 0.1, List.of(0.0, 4.0))),
          new Published<>(
              "drift",
              "drift-proof/drift.csv",
              200,
              SEED,
              new DriftProof(
                  List.of(3, 4, 6, 8, 12, 20),
                  List.of(SimulatedKind.OPEN_OVER_EAR, SimulatedKind.CLOSED_OVER_EAR))),
          new Published<>(
              "features", "feature-proof/features.csv", 400, SEED, FeatureProof.of(8, 12, 16, 30)),
          new Published<>("plans", "plan-proof/plans.csv", 500, SEED, PlanProof.of(8, 2)),
          new Published<>("plans-16", "plan-proof/plans-16.csv", 120, SEED, PlanProof.of(16, 3)),
          new Published<>(
              "continuity",
              "continuity-proof/continuity.csv",
              100,
              SEED,
              new ContinuityProof(List.of(5, 8, 12))),
          new Published<>(
              "claims-graphs",
              "claims-proof/graphs.csv",
              20,
              CLAIMS_SEED,
              new GraphClaimsProof(
                  List.of(
                      new GraphClaimsProof.Size(6, 5),
                      new GraphClaimsProof.Size(8, 3),
                      new GraphClaimsProof.Size(12, 5),
                      new GraphClaimsProof.Size(12, 1),
                      new GraphClaimsProof.Size(20, 3)),
                  4)),
          new Published<>(
              "situations",
              "situations-proof/situations.csv",
              12,
              SEED,
              new SituationProof(List.of(6, 8, 16, 30), 6)),
          new Published<>(
              "claims-units",
              "claims-proof/units.csv",
              120,
              CLAIMS_SEED,
              UnitClaimsProof.published()),
          new Published<>(
              "claims-pairs",
              "claims-proof/pairs.csv",
              40,
              CLAIMS_SEED,
              PairClaimsProof.published()));

  private Proofs() {}

  /** Run in the project's own folder. */
  public static void main(String[] arguments) {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    PrintStream err = new PrintStream(System.err, true, StandardCharsets.UTF_8);
    System.exit(run(ALL, Path.of("studies"), out, err, arguments));
  }

  static int run(
      List<Published<?>> tables,
      Path studies,
      PrintStream out,
      PrintStream err,
      String... arguments) {
    boolean other = arguments.length == 3;
    int threads = Runtime.getRuntime().availableProcessors();
    try {
      Published<?> table = named(tables, other || arguments.length == 1 ? arguments[0] : "");
      Path file = studies.resolve(table.file);
      if (!other && !Files.isDirectory(file.resolveSibling("."))) {
        throw new Refused(file + ": there is no such folder; run this in the project's own folder");
      }
      int some = other ? number("STUDIES", arguments[1], Integer::valueOf) : table.studies;
      long seed = other ? number("SEED", arguments[2], Long::valueOf) : table.seed;
      if (some < Harness.FEWEST_STUDIES) {
        throw new Refused("STUDIES must be 2 or more, but is " + some);
      }
      Harness harness = new Harness(some, seed, threads, Situation.USUAL, err::println);
      boolean kept = table.make(harness, other ? out::print : csv -> replace(file, csv, out, err));
      return kept ? 0 : 1;
    } catch (Refused e) {
      err.println(e.getMessage());
      return 2;
    }
  }

  /** A table that took an hour is printed rather than lost. */
  private static void replace(Path file, String csv, PrintStream out, PrintStream err) {
    try {
      AsideFile.replace(file, aside -> Files.writeString(aside, csv));
    } catch (IOException e) {
      err.println(file + ": could not be written (" + e.getMessage() + "); printed instead");
      out.print(csv);
    }
  }

  /** What was asked for is not understood or cannot be done. */
  private static final class Refused extends Exception {
    private static final long serialVersionUID = 1;

    Refused(String message) {
      super(message);
    }
  }

  private static Published<?> named(List<Published<?>> tables, String name) throws Refused {
    return tables.stream()
        .filter(p -> p.name.equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                new Refused(
                    "Give TABLE to make a table anew, or TABLE STUDIES SEED to print it from other"
                        + " studies; the tables are "
                        + tables.stream().map(Published::name).collect(Collectors.joining(", "))
                        + "."));
  }

  private static <T> T number(String what, String text, Function<String, T> read) throws Refused {
    try {
      return read.apply(text);
    } catch (NumberFormatException e) {
      throw new Refused(what + " must be a whole number, but is `" + text + "`");
    }
  }
}
