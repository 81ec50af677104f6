package org.twinrig.workbench;

import java.nio.file.FileSystemException;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.workbench.RefusedException.Why;

/**
 * Says why something was not done, in a sentence and what to do instead.
 *
 * @param formToken signs the form that reads the files anew
 * @param faults takes what is a fault of the program
 */
record Refusals(String formToken, Incoming.Limits limits, Consumer<Exception> faults) {

  Response of(Exception e) {
    if (e instanceof RefusedException refused) {
      return page(refused);
    }
    if (e instanceof UnusableInput unusable) {
      return because(Why.UNUSABLE, unusable.problems().stream().map(Problem::text).toList());
    }
    if (e instanceof FileSystemException disk) {
      return because(Why.DISK, List.of(told(disk)));
    }
    faults.accept(e);
    return because(Why.FAULT, List.of());
  }

  Response because(Why why, List<String> list) {
    return page(new RefusedException(why, "", list));
  }

  /** The file's own name, not where it lies; and the reason, if the system gives one. */
  private static String told(FileSystemException e) {
    String file = e.getFile() == null ? "" : e.getFile().replaceAll(".*[/\\\\]", "");
    String why = e.getReason() == null ? e.getClass().getSimpleName() : e.getReason();
    return file + ": " + why.replaceAll("Exception$", "");
  }

  private Response page(RefusedException refused) {
    return Pages.fill(
        refused.why.status,
        "message.jte",
        Map.of(
            "title",
            refused.getMessage(),
            "why",
            refused.why,
            "list",
            refused.list,
            "limits",
            limits,
            "formToken",
            formToken));
  }
}
