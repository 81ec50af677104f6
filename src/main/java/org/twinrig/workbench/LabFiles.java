package org.twinrig.workbench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.twinrig.study.Study;

/**
 * The files a study rests on besides its captures, as they were last seen, in the order of {@link
 * Study#inputs()}. Looking at them and writing one never overlap.
 */
final class LabFiles {
  static final int YAML = 0;

  static final int UNITS = 1;

  static final int CAPTURES = 2;

  /** Where there are any. */
  static final int SESSIONS = 3;

  private List<LabFile> files = List.of();

  synchronized void see(Study study) throws IOException {
    files = seen(study, List.of());
  }

  /** Looks at the files of a study that now names others; what was seen already stays as seen. */
  synchronized void follow(Study study) throws IOException {
    files = seen(study, files);
  }

  private static List<LabFile> seen(Study study, List<LabFile> known) throws IOException {
    List<LabFile> seen = new ArrayList<>();
    for (Path input : study.inputs()) {
      Path real = input.toRealPath();
      LabFile before = known.stream().filter(f -> f.path().equals(real)).findFirst().orElse(null);
      seen.add(before == null ? LabFile.read(real) : before);
    }
    return List.copyOf(seen);
  }

  synchronized LabFile get(int file) {
    return files.get(file);
  }

  /** What someone else changed since the files were seen, file by file. */
  synchronized List<LabFile.Change> changed() throws IOException {
    List<LabFile.Change> changed = new ArrayList<>();
    for (LabFile file : files) {
      file.change().ifPresent(changed::add);
    }
    return List.copyOf(changed);
  }

  /**
   * Writes a file, unless any of them was changed by others: the study is read whole after that,
   * and their change would slip in unseen.
   */
  synchronized void write(int file, byte[] bytes) throws RefusedException, IOException {
    for (LabFile.Change changed : changed()) {
      throw changed.refused();
    }
    List<LabFile> now = new ArrayList<>(files);
    now.set(file, files.get(file).replacedBy(bytes));
    files = List.copyOf(now);
  }
}
