package org.twinrig.workbench.view;

import java.util.List;
import java.util.Optional;

/**
 * A page that says one thing.
 *
 * @param sentences what there is to say
 * @param list places and lines
 * @param onward where to go from here
 * @param reload signs the form that reads the files anew; nothing when that is not offered
 * @param forward where the browser goes by itself; empty when it stays
 */
public record MessageView(
    String title,
    List<String> sentences,
    List<String> list,
    Optional<Link> onward,
    Optional<String> reload,
    String forward) {

  public MessageView {
    sentences = List.copyOf(sentences);
    list = List.copyOf(list);
  }
}
