package org.twinrig.report.html;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.html.HtmlTemplateOutput;
import gg.jte.output.StringOutput;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;

/** Fills templates: they hold headings and prose, and take what was found as it is. */
public final class Page {
  private static final int FIRST_SIZE = 1 << 18;

  private Page() {}

  /** One self-contained page from what the template takes, by name. */
  static String fill(String template, Map<String, Object> parameters) {
    StringOutput output = new StringOutput(FIRST_SIZE);
    engine().render(template, parameters, output);
    return output.toString();
  }

  /** The lines of a text for the terminal: nothing in it is escaped. */
  public static List<String> lines(String template, Map<String, Object> parameters) {
    PlainText output = new PlainText();
    engine().render(template, parameters, output);
    return output.toString().lines().toList();
  }

  /** Takes what a template shows as it is. */
  private static final class PlainText extends StringOutput implements HtmlTemplateOutput {
    @Override
    public void setContext(String tagName, String attributeName) {
      // A text has neither tags nor attributes.
    }
  }

  /** Templates are compiled into the program; no directory is looked into. */
  private static TemplateEngine engine() {
    return TemplateEngine.createPrecompiled(
        null, ContentType.Html, Page.class.getClassLoader(), "org.twinrig.report.html.page");
  }

  /** A style sheet or script of ours, put inline; a page reads the same without its script. */
  public static TrustedMarkup resource(String name) {
    try (InputStream in = Page.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program was built without " + name);
      }
      return TrustedMarkup.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
