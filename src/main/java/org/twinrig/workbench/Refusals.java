package org.twinrig.workbench;

import java.nio.file.FileSystemException;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/**
 * Says why something was not done, in a sentence and what to do instead.
 *
 * @param formToken signs the form that reads the files anew
 * @param faults takes what is a fault of the program
 */
record Refusals(String formToken, Consumer<Exception> faults) {

  Response of(Exception e) {
    if (e instanceof RefusedException refused) {
      return message(
          refused.status(), refused.title(), e.getMessage(), refused.list(), refused.reload());
    }
    if (e instanceof UnusableInput unusable) {
      List<String> problems = unusable.problems().stream().map(Problem::text).toList();
      return message(400, "This cannot be done", "Nothing was changed.", problems, false);
    }
    if (e instanceof FileSystemException disk) {
      return message(
          500,
          "The disk does not let it",
          "The change was not confirmed; a file could not be read or written. Check permissions and"
              + " room, then read the files anew.",
          List.of(told(disk)),
          true);
    }
    faults.accept(e);
    return message(
        500,
        "This should not have happened",
        "It is a fault of the program. What was confirmed before is safe in the study's files.",
        List.of(),
        true);
  }

  /** The file's own name, not where it lies; and the reason, if the system gives one. */
  private static String told(FileSystemException e) {
    String file = e.getFile() == null ? "" : e.getFile().replaceAll(".*[/\\\\]", "");
    String why = e.getReason() == null ? e.getClass().getSimpleName() : e.getReason();
    return file + ": " + why.replaceAll("Exception$", "");
  }

  static Response forbidden(String sentence) {
    return Pages.fill(403, "message.jte", Map.of("title", "Not let in", "sentence", sentence));
  }

  Response noMemory() {
    return message(
        503,
        "The memory is not enough for this",
        "The memory Java may use ("
            + Runtime.getRuntime().maxMemory() / (1 << 20)
            + " MB) is not enough for this just now. Try again when less is being done, or start"
            + " the workbench with more, for example with TWINRIG_JAVA_OPTIONS=-Xmx2g. What was"
            + " confirmed before is safe in the study's files.",
        List.of(),
        true);
  }

  Response nothingHere() {
    return message(
        404, "There is no such page", "The workbench has no page here.", List.of(), false);
  }

  private Response message(
      int status, String title, String sentence, List<String> list, boolean reload) {
    return Pages.fill(
        status,
        "message.jte",
        Map.of(
            "title", title,
            "sentence", sentence,
            "list", list,
            "onward", true,
            "formToken", reload ? formToken : ""));
  }
}
