package org.twinrig.proof;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.twinrig.internal.AsideFile;
import org.twinrig.study.PredictionModel;

/**
 * Makes the tables of the proofs anew, for maintainers: {@code TABLE} makes one as committed and
 * puts it in its place, {@code TABLE STUDIES SEED} prints it from other studies. Exit status: 0 the
 * promise is kept, 1 it is broken or the table could not be written, 2 wrong usage.
 */
final class Proofs {
  private static final long SEED = 20_261_125;

  /**
   * A committed table.
   *
   * @param name what to ask for
   * @param file where it lies in the folder of the studies
   * @param studies how many studies it is made of, for each case
   * @param seed of everything random
   */
  record Published<R>(String name, String file, int studies, long seed, Proof<R> proof) {
    private int make(Harness harness, Sink sink, PrintStream err) throws IOException {
      List<R> rows = proof.rows(harness);
      sink.take(proof.table().csv(rows));
      List<String> broken = rows.stream().flatMap(r -> proof.broken(r).stream()).toList();
      broken.forEach(err::println);
      err.println(broken.isEmpty() ? "The promise is kept." : "The promise is broken.");
      return broken.isEmpty() ? 0 : 1;
    }
  }

  private interface Sink {
    void take(String csv) throws IOException;
  }

  static final List<Published<?>> ALL =
      List.of(
          new Published<>(
              "intervals",
              "interval-proof/coverage.csv",
              200,
              SEED,
              IntervalProof.of(PredictionModel.AUTO, 8, 16, 30)),
          new Published<>(
              "average",
              "interval-proof/average.csv",
              60,
              77,
              IntervalProof.of(PredictionModel.AVERAGE, 8, 16)),
          new Published<>("seals", "seal-proof/seals.csv", 100, SEED, new SealProof(10, 4, 0.1)),
          new Published<>(
              "features", "feature-proof/features.csv", 400, SEED, FeatureProof.of(8, 12, 16, 30)),
          new Published<>("plans", "plan-proof/plans.csv", 500, SEED, PlanProof.of(8, 2)),
          new Published<>("plans-16", "plan-proof/plans-16.csv", 120, SEED, PlanProof.of(16, 3)));

  private Proofs() {}

  /** Run in the project's own folder. */
  public static void main(String[] arguments) throws IOException {
    System.exit(run(ALL, Path.of("studies"), System.out, System.err, arguments));
  }

  static int run(
      List<Published<?>> tables,
      Path studies,
      PrintStream out,
      PrintStream err,
      String... arguments)
      throws IOException {
    boolean other = arguments.length == 3;
    Published<?> table;
    Harness harness;
    try {
      table = named(tables, other || arguments.length == 1 ? arguments[0] : "");
      harness =
          new Harness(
              other ? Math.toIntExact(number("STUDIES", arguments[1])) : table.studies,
              other ? number("SEED", arguments[2]) : table.seed,
              Runtime.getRuntime().availableProcessors(),
              Situation.USUAL,
              err::println);
    } catch (IllegalArgumentException e) {
      err.println(e.getMessage());
      return 2;
    }
    Path file = studies.resolve(table.file);
    return table.make(
        harness,
        other ? out::print : csv -> AsideFile.replace(file, aside -> Files.writeString(aside, csv)),
        err);
  }

  private static Published<?> named(List<Published<?>> tables, String name) {
    return tables.stream()
        .filter(p -> p.name.equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "Give TABLE to make a table anew, or TABLE STUDIES SEED to print it from other"
                        + " studies; the tables are "
                        + tables.stream().map(Published::name).collect(Collectors.joining(", "))
                        + "."));
  }

  private static long number(String what, String text) {
    try {
      return Long.parseLong(text);
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException(
          what + " must be a whole number, but is `" + text + "`", e);
    }
  }
}
