package org.twinrig.workbench;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/**
 * What a browser asks for.
 *
 * @param method {@code GET} or {@code POST}
 * @param path without the query
 * @param fields of the query, or of the form that was sent
 * @param files that were sent
 */
record Ask(String method, String path, Map<String, String> fields, List<Upload> files) {

  Ask {
    fields = Map.copyOf(fields);
    files = List.copyOf(files);
  }

  /**
   * A file that was sent.
   *
   * @param name as the browser gives it; only ever shown, never used as a path
   * @param file where its content lies
   */
  record Upload(String name, Path file, long bytes) {}

  String text(String name) {
    return raw(name).strip();
  }

  /** A text as it was sent. */
  String raw(String name) {
    return fields.getOrDefault(name, "");
  }

  /** A whole number that the page itself had written. */
  long number(String name) throws UnusableInput {
    String text = text(name);
    if (!text.matches("[0-9]{1,15}")) {
      throw new UnusableInput(
          Problem.fatal("the page", 0, "`" + name + "` is no whole number", "open the page again"));
    }
    return Long.parseLong(text);
  }

  Optional<Double> hertz(String name) {
    String text = text(name);
    return text.matches("[0-9]{1,6}([.][0-9]{1,9})?")
        ? Optional.of(Double.parseDouble(text))
        : Optional.empty();
  }
}
