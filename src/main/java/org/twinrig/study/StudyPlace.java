package org.twinrig.study;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.twinrig.problem.UnusableInput;

/**
 * Where a study lies.
 *
 * @param folder the folder of that, as it was named
 * @param realFolder the same without links in its path
 * @param confirmed folders, without links in their paths, that whoever runs the study allows its
 *     data root to be, or to lie in
 */
record StudyPlace(Path yaml, Path folder, Path realFolder, List<Path> confirmed) {
  private static final String STUDIES = "studies";

  static StudyPlace of(Path given, List<Path> dataRoots) throws UnusableInput {
    boolean byFolder = Files.isDirectory(given);
    Path yaml = byFolder ? given.resolve("study.yaml") : given;
    if (!Files.exists(yaml)) {
      throw unusable(
          given,
          byFolder ? "holds no study.yaml" : "there is no such folder or file",
          "name the folder of a study, or its yaml file");
    }
    List<Path> confirmed = new ArrayList<>();
    for (Path root : dataRoots) {
      confirmed.add(confirmed(root));
    }
    Path folder = byFolder ? given : given.toAbsolutePath().resolveSibling("");
    try {
      StudyPlace place = new StudyPlace(yaml, folder, folder.toRealPath(), List.copyOf(confirmed));
      // Who names the yaml file itself has said where it lies.
      if (byFolder && !place.mayReach(yaml.toRealPath())) {
        throw unusable(
            yaml,
            "is a link that leads away from the study",
            "put the file itself in the place of the link");
      }
      return place;
    } catch (IOException e) {
      throw unusable(given, "cannot be reached", "check the permissions of its folder");
    }
  }

  private static Path confirmed(Path root) throws UnusableInput {
    try {
      if (Files.isDirectory(root)) {
        return root.toRealPath();
      }
    } catch (IOException e) {
      throw unusable(root, "the data root cannot be reached", "check the folder's permissions");
    }
    throw unusable(root, "there is no such folder", "give --data-root a folder that is there");
  }

  /** How problems name the yaml file. */
  String source() {
    return String.valueOf(yaml.getFileName());
  }

  /** The data root: the one declared, or the one confirmed, or what goes without saying. */
  Optional<DataRoot> dataRoot(YamlGroup root) {
    Optional<YamlValue> declared = root.value("data_root");
    if (declared.isPresent()) {
      return declared.flatMap(value -> value.text().flatMap(name -> declaredRoot(value, name)));
    }
    Path around = realFolder.resolveSibling("");
    boolean below = around.endsWith(STUDIES) && !holdsOthers(around.resolveSibling(""));
    Path unsaid = below ? around.resolveSibling("") : realFolder;
    return Optional.of(
        new DataRoot(
            confirmed.stream()
                .filter(realFolder::startsWith)
                .max(Comparator.comparingInt(Path::getNameCount))
                .orElse(unsaid)));
  }

  private Optional<DataRoot> declaredRoot(YamlValue value, String name) {
    if (DataRoot.spelling(name).orElse(null) instanceof DataRoot.Place.Refused amiss) {
      return value.amiss(": " + amiss.what(), amiss.remedy());
    }
    Path path = realFolder.resolve(name);
    if (!Files.isDirectory(path)) {
      return value.amiss(
          ": there is no folder `" + name + "`",
          "names are relative to the folder of the file that names them");
    }
    try {
      Path real = path.toRealPath();
      if (!realFolder.startsWith(real)) {
        return value.refuse("the data root must hold the study's own folder, as `..` does");
      }
      return mayReach(real)
          ? Optional.of(new DataRoot(real))
          : value.amiss(
              " is `"
                  + name
                  + "`, which is more than the folder around the study, and is not confirmed",
              "if the study may read files from there, confirm the folder with --data-root, or move"
                  + " the files closer");
    } catch (IOException e) {
      return value.refuse("the folder cannot be reached: check its permissions");
    }
  }

  /**
   * Whether a study may say of itself that its files lie here: in its own folder or the one around
   * it, or for a study below {@code studies} the one that holds {@code studies}. Wherever that is
   * somebody's home or everything, and wherever else, whoever runs the study has to say so.
   */
  private boolean mayReach(Path real) {
    Path around = realFolder.resolveSibling("");
    Path widest = around.endsWith(STUDIES) ? around.resolveSibling("") : around;
    return real.startsWith(realFolder)
        || (real.startsWith(widest) && !holdsOthers(real))
        || confirmed.stream().anyMatch(real::startsWith);
  }

  /** The top of a file system, and a home with all that lies in it. */
  private static boolean holdsOthers(Path real) {
    return real.getNameCount() == 0 || Path.of(System.getProperty("user.home")).startsWith(real);
  }

  private static UnusableInput unusable(Path given, String what, String remedy) {
    String source = given.toString().isBlank() ? "." : given.toString();
    return UnusableInput.fatal(source, 0, what, remedy);
  }
}
