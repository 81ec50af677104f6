package org.twinrig.report.html;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** Fills a template. */
final class Page {
  private Page() {}

  static String fill(String template, Object view) {
    TemplateEngine engine =
        TemplateEngine.createPrecompiled(
            null, ContentType.Html, Page.class.getClassLoader(), "org.twinrig.report.html.page");
    engine.setTrimControlStructures(true);
    StringOutput output = new StringOutput(1 << 18);
    engine.render(template, view, output);
    return output.toString();
  }

  /** The style sheet, put inline. */
  static String style() {
    try (InputStream in = Page.class.getResourceAsStream("page.css")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
