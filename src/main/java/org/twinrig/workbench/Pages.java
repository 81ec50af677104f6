package org.twinrig.workbench;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.twinrig.workbench.view.Frame;

/** Fills the workbench's templates, which escape whatever they are given. */
final class Pages {
  private final TemplateEngine engine =
      TemplateEngine.createPrecompiled(
          null, ContentType.Html, Pages.class.getClassLoader(), "org.twinrig.workbench.page");

  private final String sign;

  /**
   * Pages.
   *
   * @param sign what the forms on them carry
   */
  Pages(String sign) {
    this.sign = sign;
  }

  String sign() {
    return sign;
  }

  String fill(String template, Object view) {
    StringOutput output = new StringOutput(1 << 16);
    engine.render(template, view, output);
    return output.toString();
  }

  Frame frame(Book book, Leaf leaf, Frame.Part part, String title, String here) throws IOException {
    List<Frame.DiskChange> disk =
        book.changedOnDisk().stream()
            .map(c -> new Frame.DiskChange(c.file(), c.changes()))
            .toList();
    return new Frame(
        title, leaf.study().title(), leaf.revision(), sign, leaf.undo(), disk, here, part);
  }

  /** A text as part of a query. */
  static String query(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
