package org.twinrig.study;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/**
 * Where a study lies.
 *
 * @param yaml its study.yaml
 * @param folder the folder of that, as it was named
 * @param realFolder the same without links in its path
 */
record StudyPlace(Path yaml, Path folder, Path realFolder) {
  private static final String STUDIES = "studies";

  static StudyPlace of(Path given) throws UnusableInput {
    Path yaml = Files.isDirectory(given) ? given.resolve("study.yaml") : given;
    if (!Files.isRegularFile(yaml)) {
      boolean folder = Files.isDirectory(given);
      throw unusable(
          given,
          folder ? "holds no study.yaml" : "there is no such folder or file",
          "name the folder of a study, or its yaml file");
    }
    Path folder = Files.isDirectory(given) ? given : given.toAbsolutePath().resolveSibling("");
    try {
      return new StudyPlace(yaml, folder, folder.toRealPath());
    } catch (IOException e) {
      throw unusable(given, "cannot be reached", "check the permissions of its folder");
    }
  }

  /** How problems name the yaml file. */
  String source() {
    return String.valueOf(yaml.getFileName());
  }

  /** The data root: the one declared, or what holds {@code studies}, or the folder itself. */
  Optional<DataRoot> dataRoot(YamlGroup root) {
    Optional<YamlValue> declared = root.value("data_root");
    if (declared.isPresent()) {
      return declared.flatMap(value -> value.text().flatMap(name -> declaredRoot(value, name)));
    }
    Path parent = realFolder.resolveSibling("");
    return Optional.of(
        new DataRoot(parent.endsWith(STUDIES) ? parent.resolveSibling("") : realFolder));
  }

  private Optional<DataRoot> declaredRoot(YamlValue value, String name) {
    if (DataRoot.spelling(name).orElse(null) instanceof DataRoot.Place.Refused amiss) {
      return value.problem(value.line(), "`data_root`: " + amiss.what(), amiss.remedy());
    }
    Path path = realFolder.resolve(name);
    if (!Files.isDirectory(path)) {
      return value.problem(
          value.line(),
          "`data_root`: there is no folder `" + name + "`",
          "names are relative to the folder of the file that names them");
    }
    try {
      Path real = path.toRealPath();
      return realFolder.startsWith(real)
          ? Optional.of(new DataRoot(real))
          : value.refuse("the data root must hold the study's own folder, as `../..` does");
    } catch (IOException e) {
      return value.refuse("the folder cannot be reached: check its permissions");
    }
  }

  private static UnusableInput unusable(Path given, String what, String remedy) {
    String source = given.toString().isBlank() ? "." : given.toString();
    return new UnusableInput(List.of(Problem.fatal(source, 0, what, remedy)));
  }
}
