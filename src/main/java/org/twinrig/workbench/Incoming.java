package org.twinrig.workbench;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.MultiPart;
import org.eclipse.jetty.http.MultiPartConfig;
import org.eclipse.jetty.http.MultiPartFormData;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.io.content.ByteBufferContentSource;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.util.Fields;
import org.eclipse.jetty.util.UrlEncoded;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/**
 * Reads what a request carries. A body is read to its end before it is looked at, whether its
 * length was told beforehand or not: a browser that is stopped while it sends shows no message.
 */
final class Incoming {
  /** A graph is some kilobytes; sound and long sweeps are not old graphs. */
  static final int MOST_BYTES_A_FILE = 4 * 1024 * 1024;

  static final int MOST_FILES = 200;
  static final int MOST_FORM_BYTES = 2 * 1024 * 1024;
  private static final int MOST_BYTES_AT_ONCE = 32 * 1024 * 1024;
  private static final long MOST_BYTES_DRAINED = 1L << 30;
  private static final int MOST_FIELDS = 10 * MOST_FILES;

  private static final int MEGABYTE = 1024 * 1024;

  private final Map<String, String> fields = new HashMap<>();
  private final List<Ask.Upload> files = new ArrayList<>();

  private Incoming() {}

  /** What is asked for. */
  static Ask ask(Request request, String method, String path)
      throws IOException, TooMuchException, UnusableInput {
    Incoming in = new Incoming();
    if (method.equals("POST")) {
      in.post(request);
    } else {
      in.take(Request.extractQueryParameters(request));
    }
    return new Ask(method, path, in.fields, in.files);
  }

  private void post(Request request) throws IOException, TooMuchException, UnusableInput {
    String type = String.valueOf(request.getHeaders().get(HttpHeader.CONTENT_TYPE));
    boolean parts = type.startsWith("multipart/form-data");
    byte[] body =
        parts
            ? body(request, MOST_BYTES_AT_ONCE, TooMuchException.files())
            : body(request, MOST_FORM_BYTES, TooMuchException.form());
    try {
      if (parts) {
        parts(request, type, body);
      } else {
        Fields sent = new Fields(true);
        UrlEncoded.decodeUtf8To(new ByteArrayInputStream(body), sent, MOST_FORM_BYTES, MOST_FIELDS);
        take(sent);
      }
    } catch (RuntimeException e) {
      throw new UnusableInput(
          Problem.fatal("the page", 0, "the form did not arrive whole", "send it again"));
    }
    boolean large = files.stream().anyMatch(f -> f.bytes().length > MOST_BYTES_A_FILE);
    if (large || files.size() > MOST_FILES) {
      throw TooMuchException.files();
    }
  }

  private void take(Fields from) {
    from.forEach(f -> fields.put(f.getName(), f.getValue() == null ? "" : f.getValue()));
  }

  private void parts(Request request, String type, byte[] body) throws IOException {
    MultiPartConfig limits =
        new MultiPartConfig.Builder()
            .maxParts(MOST_FIELDS)
            .maxSize(MOST_BYTES_AT_ONCE)
            .maxPartSize(MOST_BYTES_AT_ONCE)
            .maxMemoryPartSize(MOST_BYTES_AT_ONCE)
            .useFilesForPartsWithoutFileName(false)
            .build();
    Content.Source source = new ByteBufferContentSource(ByteBuffer.wrap(body));
    try (MultiPartFormData.Parts parts =
        MultiPartFormData.getParts(source, request, type, limits)) {
      for (MultiPart.Part part : parts) {
        take(part);
      }
    }
  }

  private void take(MultiPart.Part part) throws IOException {
    try (InputStream in = Content.Source.asInputStream(part.getContentSource())) {
      byte[] bytes = in.readAllBytes();
      if (part.getFileName() == null) {
        fields.put(part.getName(), new String(bytes, StandardCharsets.UTF_8));
      } else if (!part.getFileName().isBlank()) {
        files.add(new Ask.Upload(part.getFileName(), bytes));
      }
    }
  }

  private static byte[] body(Request request, int most, TooMuchException otherwise)
      throws IOException, TooMuchException {
    try (InputStream in = Content.Source.asInputStream(request)) {
      byte[] body = in.readNBytes(most + 1);
      if (body.length <= most) {
        return body;
      }
      byte[] dropped = new byte[1 << 16];
      long left = MOST_BYTES_DRAINED;
      for (int n = in.read(dropped); n >= 0 && left > 0; n = in.read(dropped)) {
        left -= n;
      }
    }
    throw otherwise;
  }

  /** Thrown when more is sent than the workbench takes. */
  static final class TooMuchException extends Exception {
    private static final long serialVersionUID = 1L;

    private TooMuchException(String message) {
      super(message);
    }

    private static TooMuchException files() {
      return new TooMuchException(
          "At most "
              + MOST_FILES
              + " files of at most "
              + MOST_BYTES_A_FILE / MEGABYTE
              + " MB each, and "
              + MOST_BYTES_AT_ONCE / MEGABYTE
              + " MB in all, are taken at once. Nothing was read; send fewer, or list them in"
              + " catalogue.csv and run `twinrig translate`.");
    }

    private static TooMuchException form() {
      return new TooMuchException(
          "A form may hold at most "
              + MOST_FORM_BYTES / MEGABYTE
              + " MB of text. Nothing was read; send less at once.");
    }
  }
}
