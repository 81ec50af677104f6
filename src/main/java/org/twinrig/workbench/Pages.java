package org.twinrig.workbench;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.output.StringOutput;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.UnusableInput;
import org.twinrig.reliability.MarkedBand;

/** Fills the workbench's templates, which escape whatever they are given, and knows all paths. */
public final class Pages {
  private static final TemplateEngine ENGINE =
      TemplateEngine.createPrecompiled(
          null, ContentType.Html, Pages.class.getClassLoader(), "org.twinrig.workbench.page");

  final StudySession session;
  final Work.Queue queue;
  private final String formToken;

  Pages(StudySession session, Work.Queue queue, String formToken) {
    this.session = session;
    this.queue = queue;
    this.formToken = formToken;
  }

  /** A page from what its template takes, by name. */
  static Response fill(String template, Map<String, Object> parameters) {
    return fill(200, template, parameters);
  }

  static Response fill(int status, String template, Map<String, Object> parameters) {
    StringOutput output = new StringOutput(1 << 16);
    ENGINE.render(template, parameters, output);
    return Response.html(status, output.toString());
  }

  Frame frame(Frame.Part part, String title, String here) throws IOException {
    return new Frame(part, title, here, session.snapshot(), formToken, session.changedOnDisk());
  }

  /** Begins longer work, and sends the browser where it can watch; it is shown on its page then. */
  Response begin(String title, String back, Work.Task task) throws UnusableInput {
    return Response.seeOther(queue.begin(title, back, task).path());
  }

  /** To the page a form names as its own, else to another. */
  static Response back(Request request, String otherwise) {
    String back = request.text("back");
    // Only to a page of our own: a path and a query of plain letters, never another host.
    boolean own = back.matches("[.]/[a-z-]*([?][A-Za-z0-9._~%+=&*-]*)?");
    return Response.seeOther(own ? back : otherwise);
  }

  /** A text as part of a query. */
  static String query(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  public static String unit(String name) {
    return "./unit?name=" + query(name);
  }

  public static String entry(CaptureEntry capture) {
    return unit(capture.unit()) + "#entry-" + capture.line();
  }

  public static String zones(KindOutcome kind) {
    return "./zones?kind=" + query(kind.kind());
  }

  public static String band(KindOutcome kind, MarkedBand band) {
    return zones(kind) + "&hz=" + Numbers.fixed(band.band().midHz(), 3) + "#band";
  }

  /** An old graph as it is now; with {@code .csv} its table. */
  public static String graph(String name, String format) {
    return "./graph" + format + "?name=" + query(name);
  }
}
