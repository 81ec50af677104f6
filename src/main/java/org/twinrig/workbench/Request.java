package org.twinrig.workbench;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.twinrig.problem.UnusableInput;

/** What a browser asks for: the fields of a query or a form, and the files that came with it. */
record Request(Map<String, String> fields, List<SentFile> files) {

  Request {
    fields = Map.copyOf(fields);
    files = List.copyOf(files);
  }

  /** A file that was sent; its name is the browser's, only ever shown and never used as a path. */
  record SentFile(String name, Path file, long bytes) {}

  String text(String name) {
    return raw(name).strip();
  }

  String raw(String name) {
    return fields.getOrDefault(name, "");
  }

  /** A whole number that the page itself had written. */
  long number(String name) throws UnusableInput {
    String text = text(name);
    if (!text.matches("[0-9]{1,15}")) {
      throw unusable("`" + name + "` is no whole number", "open the page again");
    }
    return Long.parseLong(text);
  }

  Optional<Double> hertz(String name) {
    String text = text(name);
    return text.matches("[0-9]{1,6}([.][0-9]{1,9})?")
        ? Optional.of(Double.parseDouble(text))
        : Optional.empty();
  }

  /** What a page asked for cannot be had. */
  static UnusableInput unusable(String what, String remedy) {
    return UnusableInput.fatal("the page", 0, what, remedy);
  }
}
