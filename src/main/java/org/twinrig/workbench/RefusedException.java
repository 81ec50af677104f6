package org.twinrig.workbench;

import java.util.List;

/** Thrown when a request is not carried out; what the browser is told stands in message.jte. */
public final class RefusedException extends Exception {
  private static final long serialVersionUID = 1L;
  final Why why;
  final transient List<String> list;

  /** Why a request is not carried out: what HTTP calls it, and what the page is called. */
  public enum Why {
    OTHER_NAME(403, "Not let in"),
    OTHER_PAGE(403, "Not let in"),
    NO_COOKIE(403, "Not let in"),
    OTHER_TOKEN(403, "Not let in"),
    OTHER_FORM(403, "Not let in"),
    NO_PAGE(404, "There is no such page"),
    UNUSABLE(400, "This cannot be done"),
    STALE(409, "The study has changed meanwhile"),
    CHANGED_ON_DISK(409, "%s has changed on the disk"),
    TOO_MANY_FILES(413, "That is too much at once"),
    TOO_MUCH_TEXT(413, "That is too much at once"),
    TOO_MUCH_TOGETHER(413, "That is too much at once"),
    TOO_SLOW(408, "That came too slowly"),
    DISK(500, "The disk does not let it"),
    FAULT(500, "This should not have happened"),
    MEMORY(503, "The memory is not enough for this");

    final int status;
    final String title;

    Why(int status, String title) {
      this.status = status;
      this.title = title;
    }
  }

  RefusedException(Why why) {
    this(why, "", List.of());
  }

  /** A refusal about one file, with what belongs to the message line by line. */
  RefusedException(Why why, String file, List<String> list) {
    super(why.title.formatted(file));
    this.why = why;
    this.list = List.copyOf(list);
  }
}
