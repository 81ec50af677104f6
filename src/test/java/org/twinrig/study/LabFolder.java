package org.twinrig.study;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/** A copy of the sound study among the test resources, to be spoiled. */
final class LabFolder {
  private final Path root;

  private LabFolder(Path root) {
    this.root = root;
  }

  static LabFolder in(Path target) throws IOException {
    Path source = resource();
    try (Stream<Path> all = Files.walk(source)) {
      for (Path each : all.toList()) {
        Path copy = target.resolve(source.relativize(each).toString());
        if (Files.isDirectory(each)) {
          Files.createDirectories(copy);
        } else {
          Files.copy(each, copy);
        }
      }
    }
    return new LabFolder(target);
  }

  private static Path resource() {
    try {
      return Path.of(LabFolder.class.getResource("/study/lab").toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  Path root() {
    return root;
  }

  Path study() {
    return root.resolve("studies/plate-to-head");
  }

  LabFolder spoil(String file, String sound, String spoiled) throws IOException {
    Path path = study().resolve(file);
    String text = Files.readString(path);
    if (!text.contains(sound)) {
      throw new IllegalArgumentException(file + " has no " + sound);
    }
    Files.writeString(
        path, text.replaceFirst(Pattern.quote(sound), Matcher.quoteReplacement(spoiled)));
    return this;
  }

  LabFolder write(String file, String text) throws IOException {
    Files.writeString(study().resolve(file), text);
    return this;
  }

  /** Every problem of the study, fatal or not, as a user sees it. */
  List<String> problems() {
    try {
      return texts(StudyReader.read(study()).problems());
    } catch (UnusableInput e) {
      return texts(e.problems());
    }
  }

  private static List<String> texts(List<Problem> problems) {
    return problems.stream().map(p -> p.kind() + " " + p.text()).toList();
  }
}
