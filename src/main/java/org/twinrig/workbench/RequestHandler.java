package org.twinrig.workbench;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.EofException;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.util.Callback;
import org.twinrig.workbench.RefusedException.Why;

/**
 * Takes requests from the HTTP server, lets {@link Access} look at them, and hands them on.
 *
 * @see Incoming which reads what they carry
 */
final class RequestHandler extends Handler.Abstract {
  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self';"
          + " connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

  private final Access access;
  private final Map<String, Action> actions;
  private final Incoming incoming;
  private final Refusals refusals;

  @FunctionalInterface
  interface Action {
    Response of(Request request) throws Exception;
  }

  RequestHandler(Access access, Map<String, Action> actions, Incoming incoming, Refusals refusals) {
    this.access = access;
    this.actions = Map.copyOf(actions);
    this.incoming = incoming;
    this.refusals = refusals;
  }

  @Override
  public boolean handle(
      org.eclipse.jetty.server.Request http,
      org.eclipse.jetty.server.Response out,
      Callback callback) {
    String method = http.getMethod();
    String path = access.inside(org.eclipse.jetty.server.Request.getPathInContext(http)).orElse("");
    Optional<Response> refused = refused(http, out, method, path);
    if (refused.isPresent()) {
      send(refused.get(), out, callback);
      return true;
    }
    Action action = actions.get(method + " " + path);
    if (method.equals("POST")) {
      try {
        incoming.post(http, body -> respond(r -> signed(action, r), body, out, callback));
      } catch (IOException e) {
        send(refusals.of(e), out, callback);
      }
    } else {
      respond(action, () -> Incoming.get(http), out, callback);
    }
    return true;
  }

  /** What is answered to those who are not let in, or ask for what is not there. */
  private Optional<Response> refused(
      org.eclipse.jetty.server.Request http,
      org.eclipse.jetty.server.Response out,
      String method,
      String path) {
    Optional<Why> stranger = access.stranger(http.getHeaders()::get, method);
    if (stranger.isPresent()) {
      return stranger.map(this::because);
    }
    if (path.equals(Access.ENTER)) {
      return Optional.of(enter(Incoming.get(http), out));
    }
    if (path.isEmpty() || !access.admits(org.eclipse.jetty.server.Request.getCookies(http))) {
      return Optional.of(because(Why.NO_COOKIE));
    }
    return actions.containsKey(method + " " + path)
        ? Optional.empty()
        : Optional.of(because(Why.NO_PAGE));
  }

  private Response because(Why why) {
    return refusals.because(why, List.of());
  }

  /** Sets the cookie; a page of our own leads on, so that the browser sends it along. */
  private Response enter(Request request, org.eclipse.jetty.server.Response out) {
    if (!access.knows(request.raw("token"))) {
      return because(Why.OTHER_TOKEN);
    }
    org.eclipse.jetty.server.Response.addCookie(out, access.pass());
    return Pages.fill(200, "message.jte", Map.of("title", "The workbench is open"));
  }

  private Response signed(Action action, Request request) throws Exception {
    return access.issued(request.raw(Access.FORM_TOKEN))
        ? action.of(request)
        : because(Why.OTHER_FORM);
  }

  private void respond(
      Action action,
      java.util.concurrent.Callable<Request> body,
      org.eclipse.jetty.server.Response out,
      Callback callback) {
    Response response;
    try {
      response = action.of(body.call());
    } catch (EofException e) {
      callback.failed(e); // nobody is there to be told
      return;
    } catch (Exception e) {
      response = refusals.of(e);
    } catch (OutOfMemoryError e) {
      response = because(Why.MEMORY);
    }
    send(response, out, callback);
  }

  private static void send(
      Response response, org.eclipse.jetty.server.Response out, Callback callback) {
    var headers = out.getHeaders();
    headers.put("Content-Security-Policy", POLICY);
    headers.put("X-Content-Type-Options", "nosniff");
    headers.put("Referrer-Policy", "no-referrer");
    headers.put("Cross-Origin-Resource-Policy", "same-origin");
    headers.put("Cross-Origin-Opener-Policy", "same-origin");
    headers.put(HttpHeader.CACHE_CONTROL, "no-store");
    headers.put(HttpHeader.CONTENT_TYPE, response.type());
    response.headers().forEach(headers::put);
    out.setStatus(response.status());
    out.write(true, ByteBuffer.wrap(response.body()), callback);
  }
}
