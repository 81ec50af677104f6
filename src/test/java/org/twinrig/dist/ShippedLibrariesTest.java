package org.twinrig.dist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.Set;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tech.tablesaw.api.Table;

/** What is shipped with the program, and what is left out of it. */
class ShippedLibrariesTest {
  /**
   * Its tables of characters would be a quarter of the jar. Only the class that opens files for
   * tablesaw's readers names it, to guess an encoding, and no class of ours names a reader. A class
   * that uses another has its name among its constants (Java Virtual Machine Specification, 4.4.1).
   */
  @Test
  void theUnicodeLibraryIsLeftOutBecauseNothingOfOursReachesIt() throws IOException {
    Set<String> users = new TreeSet<>();
    try (JarFile tablesaw = jarOf(Table.class)) {
      for (JarEntry entry : Collections.list(tablesaw.entries())) {
        if (names(tablesaw.getInputStream(entry).readAllBytes(), "com/ibm/")) {
          users.add(entry.getName());
        }
      }
    }
    assertEquals(Set.of("tech/tablesaw/io/Source.class"), users);

    Set<String> ours = new TreeSet<>();
    int looked = 0;
    try (Stream<Path> classes = Files.walk(Path.of("target/classes"))) {
      for (Path file : classes.filter(f -> f.toString().endsWith(".class")).toList()) {
        byte[] bytes = Files.readAllBytes(file);
        looked += names(bytes, "tech/tablesaw/api/Table") ? 1 : 0;
        if (names(bytes, "com/ibm/") || names(bytes, "tech/tablesaw/io/")) {
          ours.add(file.toString());
        }
      }
    }
    assertEquals(Set.of(), ours);
    assertTrue(looked > 1, "classes of ours that make tables with tablesaw: " + looked);
    assertThrows(
        ClassNotFoundException.class, () -> Class.forName("com.ibm.icu.text.CharsetDetector"));
  }

  private static boolean names(byte[] classFile, String name) {
    return new String(classFile, StandardCharsets.ISO_8859_1).contains(name);
  }

  /** Licences ask for their text to go along; a new version may come with another one. */
  @ParameterizedTest
  @CsvSource({
    "commons-math3.txt, org.apache.commons.math3.util.FastMath, META-INF/LICENSE.txt",
    "fastcsv.txt, de.siegmar.fastcsv.reader.CsvReader, META-INF/LICENSE",
    "jna.txt, com.sun.jna.Native, META-INF/LICENSE",
    "slf4j.txt, org.slf4j.Logger, META-INF/LICENSE.txt",
    "classgraph.txt, io.github.classgraph.ClassGraph, LICENSE-ClassGraph.txt",
    "checker-qual.txt, org.checkerframework.checker.nullness.qual.Nullable, META-INF/LICENSE.txt"
  })
  void textsOfLicencesAreThoseOfTheLibraries(String shipped, String type, String inJar)
      throws IOException, ClassNotFoundException {
    String ours = Files.readString(Path.of("src/dist/licenses", shipped));
    try (JarFile jar = jarOf(Class.forName(type));
        InputStream text = jar.getInputStream(jar.getEntry(inJar))) {
      String theirs = new String(text.readAllBytes(), StandardCharsets.UTF_8);
      assertEquals(theirs.replace("\r\n", "\n"), ours);
    }
  }

  @Test
  void theLesserLicenceIsShippedWhole() throws IOException {
    String text = Files.readString(Path.of("src/dist/licenses/vectorgraphics2d.txt"));
    assertTrue(
        text.contains("GNU LESSER GENERAL PUBLIC LICENSE\n                       Version 3"));
    assertTrue(text.contains("GNU GENERAL PUBLIC LICENSE\n                       Version 3"));
  }

  private static JarFile jarOf(Class<?> type) throws IOException {
    return new JarFile(
        Path.of(type.getProtectionDomain().getCodeSource().getLocation().getPath()).toFile());
  }
}
