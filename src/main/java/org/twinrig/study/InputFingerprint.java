package org.twinrig.study;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.twinrig.capture.Capture;
import org.twinrig.internal.Sha256;
import org.twinrig.problem.UnusableInput;

/**
 * What a result was made from: the SHA-256 (FIPS 180-4) of study.yaml, its tables and every capture
 * file that was read. The same files give the same fingerprint wherever the study lies.
 *
 * @param inputs by rising name
 * @param shortText the first 12 hexadecimal digits of the SHA-256 of all {@code name sha256} lines,
 *     each ended by a line feed, in rising order of the names
 */
public record InputFingerprint(List<Input> inputs, String shortText) {
  private static final int SHORT_DIGITS = 12;

  /**
   * One input: its name relative to the study's folder, with {@code /} on every system, and the
   * SHA-256 of its bytes, 64 hexadecimal digits in lower case.
   */
  public record Input(String name, String sha256) {}

  public InputFingerprint {
    inputs = List.copyOf(inputs);
  }

  /**
   * The fingerprint of a study, whose yaml and tables are read once more, and of its captures as
   * they were read.
   *
   * @throws UnusableInput when a file has gone since the study was read
   */
  public static InputFingerprint of(Study study, List<Capture> captures) throws UnusableInput {
    TreeMap<String, String> hashes = new TreeMap<>();
    try {
      Path folder = study.folder().toRealPath();
      for (Path input : study.inputs()) {
        hashes.put(name(folder.relativize(input.toRealPath())), Sha256.hex(input));
      }
      Path capturesFolder = folder.relativize(study.capturesFolder().toRealPath());
      for (Capture capture : captures) {
        hashes.put(name(capturesFolder.resolve(capture.entry().file())), capture.sha256());
      }
    } catch (IOException e) {
      throw UnusableInput.fatal(
          "study.yaml",
          0,
          "a file of the study cannot be read any more (" + e.getMessage() + ")",
          "leave the study's files in place while it is computed");
    }
    List<Input> inputs =
        hashes.entrySet().stream().map(e -> new Input(e.getKey(), e.getValue())).toList();
    String lines =
        inputs.stream()
            .map(input -> input.name() + " " + input.sha256() + "\n")
            .collect(Collectors.joining());
    String all = Sha256.hex(lines.getBytes(StandardCharsets.UTF_8));
    return new InputFingerprint(inputs, all.substring(0, SHORT_DIGITS));
  }

  private static String name(Path relative) {
    return relative.normalize().toString().replace('\\', '/');
  }
}
