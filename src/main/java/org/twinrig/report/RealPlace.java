package org.twinrig.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;

/** Where a path leads that may not exist yet. */
final class RealPlace {
  private RealPlace() {}

  /**
   * Follows the links in the folders of a path, but not one that it ends in.
   *
   * @return the same place, absolute, with no {@code ..}, and spelt as the disk spells what is
   *     there
   */
  static Path of(Path path) {
    Path absolute = path.toAbsolutePath();
    Path name = absolute.getFileName();
    Path parent = absolute.getParent();
    if (parent == null || name == null) {
      return absolute;
    }
    boolean plain = !name.toString().equals("..") && !name.toString().equals(".");
    Path place = plain ? folder(parent).resolve(name) : folder(absolute);
    try {
      return place.toRealPath(LinkOption.NOFOLLOW_LINKS);
    } catch (IOException e) {
      return place.normalize(); // not there yet
    }
  }

  /** A folder with every link followed; what is missing of it is added as it is written. */
  private static Path folder(Path folder) {
    Path there = folder;
    for (Path p = folder; p != null; p = Files.exists(p) ? null : p.getParent()) {
      there = p;
    }
    try {
      Path real = there.toRealPath().resolve(there.relativize(folder)).normalize();
      return real.equals(folder) ? real : folder(real); // what is missing may hold `..`
    } catch (IOException e) {
      return folder.normalize(); // cannot be reached; whoever needs it will say so
    }
  }
}
