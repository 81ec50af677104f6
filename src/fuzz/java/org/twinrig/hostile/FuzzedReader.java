package org.twinrig.hostile;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A reader given files that a coverage-guided search makes up. Started by {@code mvn -Pfuzz
 * verify}; what it finds belongs among {@link FoundFilesTest}'s files.
 */
public final class FuzzedReader {
  /** For any file of up to a megabyte, in seconds of processor time. */
  private static final double MOST_SECONDS = 2;

  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

  private static Reader reader;
  private static Lab lab;

  private FuzzedReader() {}

  /** Called once, with the name of the reader. */
  public static void fuzzerInitialize(String[] arguments) throws IOException {
    reader = Reader.valueOf(arguments[0]);
    Path temp = Path.of(System.getProperty("java.io.tmpdir"));
    lab = Lab.in(Files.createTempDirectory(temp, "twinrig-fuzz"));
  }

  /** Called for every file that was made up. */
  public static void fuzzerTestOneInput(byte[] content) throws IOException {
    double seconds = seconds(content);
    // Once more, because the first files also load and compile classes.
    if (seconds > MOST_SECONDS && seconds(content) > MOST_SECONDS) {
      throw new AssertionError("took " + seconds + " s for " + content.length + " bytes");
    }
  }

  private static double seconds(byte[] content) throws IOException {
    long start = THREADS.getCurrentThreadCpuTime();
    reader.read(lab, content);
    return 1e-9 * (THREADS.getCurrentThreadCpuTime() - start);
  }
}
