package org.twinrig.workbench;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.MultiPart;
import org.eclipse.jetty.http.MultiPartConfig;
import org.eclipse.jetty.http.MultiPartFormData;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.FormFields;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Fields;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/** Takes requests from the HTTP server, lets the {@link Gate} look at them, and hands them on. */
final class Desk extends Handler.Abstract {
  /** A graph is some kilobytes; sound and long sweeps are not old graphs. */
  static final int MOST_BYTES_A_FILE = 4 * 1024 * 1024;

  static final int MOST_FILES = 200;
  private static final long MOST_BYTES_AT_ONCE = 32L * 1024 * 1024;
  private static final long MOST_BYTES_DRAINED = 1L << 30;
  private static final int MOST_FIELDS = 400;
  private static final int MOST_FORM_BYTES = 200_000;

  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self';"
          + " connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

  private final Gate gate;
  private final Map<String, Action> actions;
  private final Refusals refusals;

  Desk(Gate gate, Map<String, Action> actions, Refusals refusals) {
    this.gate = gate;
    this.actions = Map.copyOf(actions);
    this.refusals = refusals;
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) {
    Answer answer = answer(request, response);
    var headers = response.getHeaders();
    headers.put("Content-Security-Policy", POLICY);
    headers.put("X-Content-Type-Options", "nosniff");
    headers.put("Referrer-Policy", "no-referrer");
    headers.put("Cross-Origin-Resource-Policy", "same-origin");
    headers.put("Cross-Origin-Opener-Policy", "same-origin");
    headers.put(HttpHeader.CACHE_CONTROL, "no-store");
    headers.put(HttpHeader.CONTENT_TYPE, answer.type());
    answer.headers().forEach(headers::put);
    response.setStatus(answer.status());
    response.write(true, java.nio.ByteBuffer.wrap(answer.body()), callback);
    return true;
  }

  private Answer answer(Request request, Response response) {
    try {
      String method = request.getMethod();
      Optional<String> stranger = gate.stranger(request.getHeaders()::get, method);
      if (stranger.isPresent()) {
        return refusals.forbidden(stranger.get());
      }
      String path = Request.getPathInContext(request);
      if (path.equals("/enter")) {
        return enter(request, response);
      }
      if (!gate.admits(request)) {
        return refusals.forbidden(
            "This workbench is open to those who have its address. Open the whole address it"
                + " printed when it started.");
      }
      Action action = actions.get(method + " " + path);
      return action == null ? refusals.nothingHere() : action.of(ask(request, method, path));
    } catch (Exception e) {
      return refusals.of(e);
    }
  }

  private Answer enter(Request request, Response response) {
    Fields query = Request.extractQueryParameters(request);
    String token = query.getValue("token");
    if (token == null || !gate.knows(token)) {
      return refusals.forbidden(
          "The token in this address is not the one of the workbench that runs now. Open the"
              + " whole address it printed when it started.");
    }
    Response.addCookie(response, gate.pass());
    return refusals.welcome();
  }

  private static Ask ask(Request request, String method, String path) throws Exception {
    Map<String, String> fields = new HashMap<>();
    List<Ask.Upload> files = new ArrayList<>();
    if (method.equals("POST")) {
      String type = String.valueOf(request.getHeaders().get(HttpHeader.CONTENT_TYPE));
      if (type.startsWith("multipart/form-data")) {
        parts(request, type, fields, files);
      } else {
        try {
          take(FormFields.getFields(request, MOST_FIELDS, MOST_FORM_BYTES), fields);
        } catch (RuntimeException e) {
          throw broken();
        }
      }
    } else {
      take(Request.extractQueryParameters(request), fields);
    }
    return new Ask(method, path, fields, files);
  }

  private static void take(Fields from, Map<String, String> fields) {
    from.forEach(f -> fields.put(f.getName(), f.getValue() == null ? "" : f.getValue()));
  }

  private static void parts(
      Request request, String type, Map<String, String> fields, List<Ask.Upload> files)
      throws IOException, TooMuchException, UnusableInput {
    if (request.getLength() > MOST_BYTES_AT_ONCE) {
      drain(request);
      throw new TooMuchException();
    }
    // Limits below that of the whole are looked at when all has arrived: a browser that is stopped
    // while it sends shows no message.
    MultiPartConfig limits =
        new MultiPartConfig.Builder()
            .maxParts(10 * MOST_FILES)
            .maxSize(MOST_BYTES_AT_ONCE)
            .maxPartSize(MOST_BYTES_AT_ONCE)
            .maxMemoryPartSize(MOST_BYTES_AT_ONCE)
            .useFilesForPartsWithoutFileName(false)
            .build();
    try (MultiPartFormData.Parts parts =
        MultiPartFormData.getParts(request, request, type, limits)) {
      for (MultiPart.Part part : parts) {
        take(part, fields, files);
      }
    } catch (RuntimeException e) {
      throw broken();
    }
    boolean large = files.stream().anyMatch(f -> f.bytes().length > MOST_BYTES_A_FILE);
    if (large || files.size() > MOST_FILES) {
      throw new TooMuchException();
    }
  }

  private static void take(MultiPart.Part part, Map<String, String> fields, List<Ask.Upload> files)
      throws IOException {
    try (InputStream in = Content.Source.asInputStream(part.getContentSource())) {
      byte[] bytes = in.readAllBytes();
      if (part.getFileName() == null) {
        fields.put(part.getName(), new String(bytes, StandardCharsets.UTF_8));
      } else if (!part.getFileName().isBlank()) {
        files.add(new Ask.Upload(part.getFileName(), bytes));
      }
    }
  }

  /** Lets a browser send to the end, so that it then reads the answer. */
  private static void drain(Request request) throws IOException {
    try (InputStream in = Content.Source.asInputStream(request)) {
      byte[] dropped = new byte[1 << 16];
      long left = MOST_BYTES_DRAINED;
      for (int n = in.read(dropped); n >= 0 && left > 0; n = in.read(dropped)) {
        left -= n;
      }
    }
  }

  private static UnusableInput broken() {
    return new UnusableInput(
        Problem.fatal("the page", 0, "the form did not arrive whole", "send it again"));
  }

  /** Thrown when more is sent than the workbench takes. */
  static final class TooMuchException extends Exception {
    private static final long serialVersionUID = 1L;

    TooMuchException() {
      super(
          "At most "
              + MOST_FILES
              + " graphs of at most "
              + MOST_BYTES_A_FILE / (1024 * 1024)
              + " MB each, and "
              + MOST_BYTES_AT_ONCE / (1024 * 1024)
              + " MB in all, are taken at once. Nothing was read; send fewer, or list them in"
              + " catalogue.csv and run `twinrig translate`.");
    }
  }
}
