package org.twinrig.workbench.view;

import java.util.List;

/**
 * How far a longer piece of work is.
 *
 * @param frame around it
 * @param done steps
 * @param total steps; 0 while not known
 * @param state how it stands, as a sentence
 * @param problems why it failed
 * @param running whether it goes on
 * @param onward where the result is
 */
public record WorkView(
    Frame frame,
    long id,
    String title,
    int done,
    int total,
    String state,
    List<String> problems,
    boolean running,
    Link onward) {

  public WorkView {
    problems = List.copyOf(problems);
  }
}
