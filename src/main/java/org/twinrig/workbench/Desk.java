package org.twinrig.workbench;

import java.util.Map;
import java.util.Optional;
import org.eclipse.jetty.http.HttpHeader;
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
      if (action == null) {
        return refusals.nothingHere();
      }
      Ask ask = Incoming.ask(request, method, path);
      if (method.equals("POST") && !gate.signed(ask.raw(Gate.SIGN))) {
        return refusals.forbidden(
            "This form does not come from a page of the workbench that runs now, and was not"
                + " carried out. Open the page again and send it from there.");
      }
      return action.of(ask);
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
}
