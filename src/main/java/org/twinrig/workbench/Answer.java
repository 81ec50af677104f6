package org.twinrig.workbench;

import java.nio.charset.StandardCharsets;
import java.util.Map;

/**
 * What goes back to the browser.
 *
 * @param status of HTTP
 * @param type of the content
 * @param body the content
 * @param headers besides those every answer has
 */
@SuppressWarnings("ArrayRecordComponent")
record Answer(int status, String type, byte[] body, Map<String, String> headers) {
  private static final String HTML = "text/html; charset=utf-8";

  static Answer page(String html) {
    return page(200, html);
  }

  static Answer page(int status, String html) {
    return new Answer(status, HTML, html.getBytes(StandardCharsets.UTF_8), Map.of());
  }

  /** Sends the browser on, so that reloading the page does not repeat the change. */
  static Answer seeOther(String place) {
    return new Answer(303, HTML, new byte[0], Map.of("Location", place));
  }

  static Answer download(String fileName, String text) {
    return new Answer(
        200,
        "text/csv; charset=utf-8",
        text.getBytes(StandardCharsets.UTF_8),
        Map.of("Content-Disposition", "attachment; filename=\"" + fileName + "\""));
  }
}
