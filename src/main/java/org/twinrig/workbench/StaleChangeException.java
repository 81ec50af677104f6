package org.twinrig.workbench;

import java.util.List;

/** Thrown when a change was asked for on a page that is no longer how things stand. */
final class StaleChangeException extends Exception {
  private static final long serialVersionUID = 1L;

  /** What happened since, oldest first. */
  private final transient List<String> meanwhile;

  StaleChangeException(List<String> meanwhile) {
    super("the page is older than the study");
    this.meanwhile = List.copyOf(meanwhile);
  }

  List<String> meanwhile() {
    return meanwhile;
  }
}
