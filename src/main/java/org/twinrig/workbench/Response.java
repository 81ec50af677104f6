package org.twinrig.workbench;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** What goes back to the browser: HTTP's status, the content, and headers of this response only. */
@SuppressWarnings("ArrayRecordComponent")
record Response(int status, String type, byte[] body, Map<String, String> headers) {
  private static final String HTML = "text/html; charset=utf-8";

  static Response html(int status, String html) {
    return new Response(status, HTML, html.getBytes(StandardCharsets.UTF_8), Map.of());
  }

  /** Sends the browser on, so that reloading the page does not repeat the change. */
  static Response seeOther(String place) {
    return new Response(303, HTML, new byte[0], Map.of("Location", place));
  }

  static Response text(String type, String text, Map<String, String> headers) {
    byte[] body = text.getBytes(StandardCharsets.UTF_8);
    return new Response(200, "text/" + type + "; charset=utf-8", body, headers);
  }

  /** The header by which a browser saves what it is sent, under a name. */
  static Map<String, String> saved(String fileName) {
    return Map.of("Content-Disposition", "attachment; filename=\"" + fileName + "\"");
  }

  /** A style sheet, script or picture out of the program itself. */
  static Response asset(String name, String type) {
    try (InputStream in = Response.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("the program was built without " + name);
      }
      return new Response(200, type, in.readAllBytes(), Map.of());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
