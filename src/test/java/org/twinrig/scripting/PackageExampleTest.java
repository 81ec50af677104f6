package org.twinrig.scripting;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import javax.tools.DiagnosticCollector;
import javax.tools.JavaCompiler;
import javax.tools.JavaFileObject;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The example in the package's documentation is compiled and run as it stands. */
class PackageExampleTest {
  private static final byte[] PNG_SIGNATURE = {(byte) 0x89, 'P', 'N', 'G'};

  @TempDir Path folder;

  @Test
  void theExampleRuns() throws Exception {
    Path source = folder.resolve("Example.java");
    Files.writeString(source, example());
    compile(source);
    Path figure = folder.resolve("figure.png");

    String printed = run(figure);

    assertEquals(
        List.of(
            "../../demo-data/plate-to-head/units.csv:2: unit `Alder 1` has no usable capture on"
                + " `head` and takes no part",
            "../../demo-data/plate-to-head/units.csv:15: unit `Yew 16` has no usable capture on"
                + " `plate` and takes no part",
            "../../demo-data/plate-to-head/units.csv:29: unit `Elm 19` has no usable capture on"
                + " `head` and takes no part",
            "9173 Hz: the kind -4.2 dB +/- 1.9, a unit +/- 2.3: caution (wide prediction; units"
                + " disagree; declared zone; resonance wanders)",
            "publish with marks: 6.0 octaves reliable"),
        printed.lines().toList());
    byte[] start = Arrays.copyOf(Files.readAllBytes(figure), PNG_SIGNATURE.length);
    assertArrayEquals(PNG_SIGNATURE, start);
  }

  /** The text between {@code <pre>} and {@code </pre>}, without the comment's stars. */
  private static String example() throws Exception {
    String text =
        Files.readString(Path.of("src/main/java/org/twinrig/scripting/package-info.java"));
    String start = " * <pre>{@code\n";
    int from = text.indexOf(start) + start.length();
    return text.substring(from, text.indexOf(" * }</pre>"))
        .lines()
        .map(line -> line.replaceFirst("^ \\* ?", ""))
        .collect(Collectors.joining("\n"));
  }

  private void compile(Path source) throws Exception {
    JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
    DiagnosticCollector<JavaFileObject> problems = new DiagnosticCollector<>();
    try (StandardJavaFileManager files =
        compiler.getStandardFileManager(problems, null, StandardCharsets.UTF_8)) {
      List<String> options =
          List.of("-d", folder.toString(), "-cp", System.getProperty("java.class.path"));
      boolean compiled =
          compiler
              .getTask(
                  null, files, problems, options, null, files.getJavaFileObjects(source.toFile()))
              .call();
      assertTrue(compiled, problems.getDiagnostics().toString());
    }
  }

  private String run(Path figure) throws Exception {
    PrintStream standard = System.out;
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    try (URLClassLoader loader =
        new URLClassLoader(new URL[] {folder.toUri().toURL()}, getClass().getClassLoader())) {
      System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
      var main = loader.loadClass("Example").getDeclaredMethod("main", String[].class);
      main.setAccessible(true);
      main.invoke(null, (Object) new String[] {figure.toString()});
    } finally {
      System.setOut(standard);
    }
    return printed.toString(StandardCharsets.UTF_8);
  }
}
