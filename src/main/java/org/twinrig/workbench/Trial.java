package org.twinrig.workbench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.StudyReader;

/** A changed study.yaml is read by the real reader before it takes the old one's place. */
final class Trial {
  private Trial() {}

  /**
   * Reads a copy that lies where the file does, so that every name in it leads where it will.
   *
   * @throws UnusableInput in the words every command would use
   */
  static void of(LabFile yaml, byte[] bytes, List<Path> dataRoots)
      throws UnusableInput, IOException {
    Path copy = yaml.written(bytes);
    String aside = Objects.requireNonNull(copy.getFileName(), "a file").toString();
    try {
      StudyReader.read(copy, dataRoots);
    } catch (UnusableInput e) {
      throw new UnusableInput(
          e.problems().stream()
              .map(
                  p ->
                      p.source().equals(aside)
                          ? new Problem(p.kind(), yaml.name(), p.line(), p.what(), p.remedy())
                          : p)
              .toList());
    } finally {
      Files.deleteIfExists(copy);
    }
  }
}
