package org.twinrig.report.html;

import gg.jte.Content;
import gg.jte.TemplateOutput;

/**
 * Markup of our own that goes into a page as it is. Everything else is escaped by the template
 * engine; only this package can say that a text is trusted.
 */
public final class TrustedMarkup implements Content {
  private final String markup;

  private TrustedMarkup(String markup) {
    this.markup = markup;
  }

  /** Only for texts this program wrote itself: its drawings, swatches and style sheet. */
  static TrustedMarkup of(String markup) {
    return new TrustedMarkup(markup);
  }

  @Override
  public void writeTo(TemplateOutput output) {
    output.writeContent(markup);
  }
}
