package org.twinrig;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.properties.HasName;
import com.tngtech.archunit.core.domain.properties.HasOwner;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.BaseStream;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.twinrig.workbench.Workbench;

/** Holds the one way through the packages, and every outside library inside its fence. */
class ArchitectureTest {
  /** In the order of the way: a package may use those before it. */
  private static final List<String> WAY =
      List.of(
          "problem",
          "band",
          "response",
          "spectrum",
          "capture",
          "intake",
          "study",
          "screening",
          "regression",
          "reliability",
          "doubt",
          "translation",
          "evidence",
          "simulation",
          "analysis",
          "report",
          "scripting",
          "workbench",
          "cli");

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .withImportOption(location -> !location.contains("/html/page/"))
          .withImportOption(location -> !location.contains("/workbench/page/"))
          .importPackages("org.twinrig");

  @TestFactory
  Stream<DynamicTest> aPackageUsesOnlyThoseBeforeIt() {
    return WAY.stream()
        .limit(WAY.size() - 1)
        .map(
            name -> {
              String[] later =
                  WAY.subList(WAY.indexOf(name) + 1, WAY.size()).stream()
                      .map(l -> "org.twinrig." + l + "..")
                      .toArray(String[]::new);
              return DynamicTest.dynamicTest(
                  name,
                  () ->
                      noClasses()
                          .that()
                          .resideInAPackage("org.twinrig." + name + "..")
                          .should()
                          .dependOnClassesThat()
                          .resideInAnyPackage(later)
                          .check(CLASSES));
            });
  }

  @Test
  void noPackagesGoRoundInCircles() {
    slices().matching("org.twinrig.(**)").should().beFreeOfCycles().check(CLASSES);
  }

  @Test
  void internalsUseNobody() {
    noClasses()
        .that()
        .resideInAPackage("org.twinrig.internal..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(WAY.stream().map(p -> "org.twinrig." + p + "..").toArray(String[]::new))
        .check(CLASSES);
  }

  @TestFactory
  Stream<DynamicTest> outsideLibrariesStayInsideTheirFence() {
    return Stream.of(
        fence("com.sun.jna..", "org.twinrig.internal"),
        fence("org.ejml..", "org.twinrig.internal.linalg.."),
        fence("org.knowm..", "org.twinrig.report.figure.."),
        fence("de.erichseifert..", "org.twinrig.report.figure.."),
        fence("gg.jte..", "org.twinrig.report.html..", "org.twinrig.workbench"),
        fence("org.eclipse.jetty..", "org.twinrig.workbench"),
        fence("tech.tablesaw..", "org.twinrig.report..", "org.twinrig.scripting.."),
        fence("de.siegmar..", "org.twinrig.intake..", "org.twinrig.report.table.."),
        fence("org.snakeyaml..", "org.twinrig.study.."),
        fence("com.fasterxml..", "org.twinrig.translation..", "org.twinrig.report.."),
        fence("picocli..", "org.twinrig.cli.."),
        fence(
            "org.apache.commons.math3..",
            "org.twinrig.screening..",
            "org.twinrig.spectrum..",
            "org.twinrig.regression..",
            "org.twinrig.reliability..",
            "org.twinrig.doubt..",
            "org.twinrig.translation..",
            "org.twinrig.evidence.."));
  }

  /** Pages show what was found: a template reads outcomes and asks the helpers of its package. */
  @Test
  void templatesReadOutcomesAndComputeNothing() {
    JavaClasses templates = new ClassFileImporter().importPackages("org.twinrig.report.html.page");
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideOutsideOfPackages(
            "java.lang..",
            "java.util",
            "java.util.function",
            "java.util.stream",
            "gg.jte..",
            "org.twinrig.internal",
            "org.twinrig.problem..",
            "org.twinrig.band..",
            "org.twinrig.response..",
            "org.twinrig.capture..",
            "org.twinrig.study..",
            "org.twinrig.screening..",
            "org.twinrig.regression..",
            "org.twinrig.reliability..",
            "org.twinrig.doubt..",
            "org.twinrig.translation..",
            "org.twinrig.evidence..",
            "org.twinrig.analysis..",
            "org.twinrig.report.figure..",
            "org.twinrig.report.table..",
            "org.twinrig.report.html..")
        .check(templates);
    noClasses()
        .should()
        .dependOnClassesThat(
            assignableTo(BaseStream.class)
                .and(not(assignableTo(Stream.class)))
                .or(assignableTo(Collectors.class)))
        .orShould()
        .callMethodWhere(
            JavaCall.Predicates.target(HasOwner.Predicates.With.owner(assignableTo(Math.class)))
                .and(JavaCall.Predicates.target(not(HasName.Predicates.name("abs")))))
        .check(templates);
  }

  /** What is not escaped is of type {@code TrustedMarkup}; and "@else" before "if" is no branch. */
  @Test
  void templatesEscapeAndBranch() throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src", "main"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".jte")).toList()) {
        String text = Files.readString(file);
        assertFalse(text.contains("$unsafe"), file.toString());
        assertFalse(Pattern.compile("@elsei(?!f\\()").matcher(text).find(), file.toString());
      }
    }
  }

  /** The command that opens the workbench knows its door; all else there is nobody's business. */
  @Test
  void commandsKnowOnlyTheDoorOfTheWorkbench() {
    noClasses()
        .that()
        .resideInAPackage("org.twinrig.cli..")
        .should()
        .dependOnClassesThat(
            resideInAPackage("org.twinrig.workbench..")
                .and(not(assignableTo(Workbench.class)))
                .and(not(assignableTo(Workbench.Options.class))))
        .check(CLASSES);
  }

  /** What scripts are promised stays free of what commands and the workbench would need of it. */
  @Test
  void nobodyInsideUsesWhatIsForScripts() {
    noClasses()
        .that()
        .resideOutsideOfPackage("org.twinrig.scripting..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("org.twinrig.scripting..")
        .check(CLASSES);
  }

  /** Proofs lie beside the program and use it; what is shipped neither holds nor needs them. */
  @Test
  void theProgramHoldsNoProofs() {
    noClasses().should().resideInAPackage("org.twinrig.proof..").check(CLASSES);
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAPackage("org.twinrig.proof..")
        .check(CLASSES);
  }

  private static DynamicTest fence(String library, String... inside) {
    return DynamicTest.dynamicTest(
        library,
        () ->
            noClasses()
                .that()
                .resideInAPackage("org.twinrig..")
                .and()
                .resideOutsideOfPackages(inside)
                .should()
                .dependOnClassesThat()
                .resideInAPackage(library)
                .allowEmptyShould(true)
                .check(CLASSES));
  }
}
