package org.twinrig.workbench;

import java.nio.file.FileSystemException;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.workbench.view.Link;
import org.twinrig.workbench.view.MessageView;

/** Says why something was not done, in a sentence and what to do instead. */
final class Refusals {
  private static final Optional<Link> HOME = Optional.of(new Link("Go to the captures", "./"));

  private final Pages pages;
  private final Consumer<Exception> faults;

  /**
   * Refusals.
   *
   * @param faults takes what is a fault of the program
   */
  Refusals(Pages pages, Consumer<Exception> faults) {
    this.pages = pages;
    this.faults = faults;
  }

  Answer of(Exception e) {
    if (e instanceof UnusableInput unusable) {
      return message(
          400,
          "This cannot be done",
          "Nothing was changed.",
          unusable.problems().stream().map(Problem::text).toList(),
          false);
    }
    if (e instanceof StaleChangeException stale) {
      return message(
          409,
          "The study has changed meanwhile",
          "Nothing was changed: the page you sent this from is older than the study. Since then:",
          stale.meanwhile(),
          false);
    }
    if (e instanceof LabFile.ChangedOnDiskException changed) {
      return message(
          409,
          changed.file() + " has changed on the disk",
          "Nothing was written, so that nobody's work is lost. Someone else changed this:",
          changed.changes(),
          true);
    }
    if (e instanceof Incoming.NotTakenException not) {
      return message(not.status(), not.title(), not.getMessage(), List.of(), false);
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

  Answer forbidden(String sentence) {
    return Answer.page(
        403,
        pages.fill(
            "message.jte",
            new MessageView(
                "Not let in",
                List.of(sentence),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                "")));
  }

  Answer noMemory() {
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

  Answer nothingHere() {
    return message(404, "There is no such page", "The book has no page here.", List.of(), false);
  }

  /** The cookie is set; a page of our own leads on, so that the browser sends it along. */
  Answer welcome() {
    return Answer.page(
        pages.fill(
            "message.jte",
            new MessageView(
                "The workbench is open",
                List.of(),
                List.of(),
                HOME,
                Optional.empty(),
                "0;url=./")));
  }

  private Answer message(
      int status, String title, String sentence, List<String> list, boolean reload) {
    return Answer.page(
        status,
        pages.fill(
            "message.jte",
            new MessageView(
                title,
                List.of(sentence),
                list,
                HOME,
                reload ? Optional.of(pages.sign()) : Optional.empty(),
                "")));
  }
}
