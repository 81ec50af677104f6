package org.twinrig.workbench;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Map;
import java.util.Optional;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.EofException;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.Fields;

/** Takes requests from the HTTP server, lets the {@link Gate} look at them, and hands them on. */
final class Desk extends Handler.Abstract {
  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self';"
          + " connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

  private final Gate gate;
  private final Map<String, Action> actions;
  private final Incoming incoming;
  private final Refusals refusals;

  Desk(Gate gate, Map<String, Action> actions, Incoming incoming, Refusals refusals) {
    this.gate = gate;
    this.actions = Map.copyOf(actions);
    this.incoming = incoming;
    this.refusals = refusals;
  }

  @Override
  public boolean handle(Request request, Response response, Callback callback) {
    String method = request.getMethod();
    String path = gate.inside(Request.getPathInContext(request)).orElse("");
    Optional<Answer> refused = refused(request, response, method, path);
    if (refused.isPresent()) {
      send(refused.get(), response, callback);
      return true;
    }
    Action action = actions.get(method + " " + path);
    if (method.equals("POST")) {
      try {
        incoming.post(request, path, body -> answer(action, body, response, callback));
      } catch (IOException e) {
        send(refusals.of(e), response, callback);
      }
    } else {
      answer(action, () -> Incoming.get(request, path), response, callback);
    }
    return true;
  }

  /** What is answered to those who are not let in, or ask for what is not there. */
  private Optional<Answer> refused(Request request, Response response, String method, String path) {
    Optional<String> stranger = gate.stranger(request.getHeaders()::get, method);
    if (stranger.isPresent()) {
      return stranger.map(refusals::forbidden);
    }
    if (path.equals(Gate.ENTER)) {
      return Optional.of(enter(request, response));
    }
    if (path.isEmpty() || !gate.admits(request)) {
      return Optional.of(
          refusals.forbidden(
              "This workbench is open to those who have its address. Open the whole address it"
                  + " printed when it started."));
    }
    return actions.containsKey(method + " " + path)
        ? Optional.empty()
        : Optional.of(refusals.nothingHere());
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

  private void answer(Action action, Incoming.Body body, Response response, Callback callback) {
    Answer answer;
    try {
      Ask ask = body.ask();
      answer =
          ask.method().equals("POST") && !gate.signed(ask.raw(Gate.SIGN))
              ? refusals.forbidden(
                  "This form does not come from a page of the workbench that runs now, and was not"
                      + " carried out. Open the page again and send it from there.")
              : action.of(ask);
    } catch (EofException e) {
      callback.failed(e); // nobody is there to be told
      return;
    } catch (Exception e) {
      answer = refusals.of(e);
    } catch (OutOfMemoryError e) {
      answer = refusals.noMemory();
    }
    send(answer, response, callback);
  }

  private static void send(Answer answer, Response response, Callback callback) {
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
    response.write(true, ByteBuffer.wrap(answer.body()), callback);
  }
}
