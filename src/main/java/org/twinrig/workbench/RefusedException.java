package org.twinrig.workbench;

import java.util.List;

/** Thrown when a request is not carried out: what the page that says so shows. */
final class RefusedException extends Exception {
  private static final long serialVersionUID = 1L;
  private final int status;
  private final String title;
  private final transient List<String> list;
  private final boolean reload;

  /**
   * A refusal.
   *
   * @param status what HTTP calls it
   * @param list what belongs to the message, line by line
   * @param reload whether reading the study's files anew helps
   */
  RefusedException(int status, String title, String message, List<String> list, boolean reload) {
    super(message);
    this.status = status;
    this.title = title;
    this.list = List.copyOf(list);
    this.reload = reload;
  }

  int status() {
    return status;
  }

  String title() {
    return title;
  }

  List<String> list() {
    return list;
  }

  boolean reload() {
    return reload;
  }
}
