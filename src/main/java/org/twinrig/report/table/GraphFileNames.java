package org.twinrig.report.table;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * File names for graphs: letters, digits, dots, hyphens and underscores only, no name a system
 * keeps for itself, and no two alike on a disk that ignores case.
 */
public final class GraphFileNames {
  private static final Pattern UNSAFE = Pattern.compile("[^A-Za-z0-9._-]+");
  private static final Pattern KEPT =
      Pattern.compile("(?i)(con|prn|aux|nul|com[0-9]|lpt[0-9])(\\..*)?");
  private static final int LONGEST = 100;

  private final Map<String, String> names = new HashMap<>();

  /** Names for graphs of different ids, in the order of the catalogue. */
  public GraphFileNames(List<String> graphs) {
    Set<String> taken = new HashSet<>();
    for (String graph : graphs) {
      String plain = plain(graph);
      String name = plain;
      for (int k = 2; !taken.add(name.toLowerCase(Locale.ROOT)); k++) {
        name = plain + "_" + k;
      }
      names.put(graph, name);
    }
  }

  public String of(String graph) {
    String name = names.get(graph);
    if (name == null) {
      throw new IllegalArgumentException("no such graph: " + graph);
    }
    return name;
  }

  private static String plain(String graph) {
    String name = UNSAFE.matcher(graph).replaceAll("_");
    name = name.length() > LONGEST ? name.substring(0, LONGEST) : name;
    boolean unfit = name.startsWith(".") || name.startsWith("-") || KEPT.matcher(name).matches();
    return unfit ? "graph_" + name : name;
  }
}
