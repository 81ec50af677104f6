package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** A server of someone else on another port of this machine, which keeps all it is told. */
final class OtherPort implements AutoCloseable {
  private final HttpServer server;
  private final List<Told> told = new CopyOnWriteArrayList<>();
  private volatile String page = "<title>another port</title>";

  /** A request, as it came. */
  private record Told(String line, List<String> headers) {}

  OtherPort() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext("/", this::response);
    server.start();
  }

  private void response(HttpExchange exchange) throws IOException {
    try (exchange) {
      List<String> headers = new CopyOnWriteArrayList<>();
      exchange
          .getRequestHeaders()
          .forEach((name, values) -> values.forEach(v -> headers.add(name + ": " + v)));
      told.add(
          new Told(
              exchange.getRequestMethod() + " " + exchange.getRequestURI(), List.copyOf(headers)));
      byte[] body = page.getBytes(StandardCharsets.UTF_8);
      exchange.getResponseHeaders().set("Content-Type", "text/html; charset=utf-8");
      exchange.sendResponseHeaders(200, body.length);
      exchange.getResponseBody().write(body);
    }
  }

  String root() {
    return "http://127.0.0.1:" + server.getAddress().getPort();
  }

  /** What it shows from now on. */
  void show(String html) {
    page = html;
  }

  boolean wasAsked(String line) {
    return told.stream().anyMatch(t -> t.line().equals(line));
  }

  /** Nothing it was told is a secret of a workbench, and with all of it nobody is let in. */
  void refuted(Browser browser) throws Exception {
    assertFalse(told.isEmpty(), "it was asked");
    String cookie = browser.cookie().substring(browser.cookie().indexOf('=') + 1);
    String token = browser.address().substring(browser.address().indexOf('=') + 1);
    for (Told each : told) {
      String whole = each.toString();
      for (String secret : List.of(cookie, token, browser.place(), browser.formToken())) {
        assertFalse(whole.contains(secret), whole);
      }
      for (String header : each.headers()) {
        assertFalse(header.startsWith("Cookie:"), whole);
        assertFalse(
            header.startsWith("Referer:") && !header.startsWith("Referer: " + root()), whole);
      }
      replay(browser, each);
    }
  }

  private static void replay(Browser browser, Told told) throws Exception {
    String known =
        told.headers().stream()
            .filter(h -> h.matches("(?i)(cookie|authorization|x-[a-z-]*):.*"))
            .reduce("", (all, h) -> all + h + "\r\n");
    String form = "revision=1&line=2&unit=" + Pages.query(browser.first().unit()) + "&reason=x";
    String path = told.line().substring(told.line().indexOf(' ') + 1);
    for (String place : List.of("", path.substring(0, path.lastIndexOf('/')))) {
      for (String start : List.of("GET " + place + "/", "POST " + place + "/leave-out")) {
        boolean post = start.startsWith("POST");
        String response =
            browser.raw(
                start
                    + " HTTP/1.1\r\nHost: 127.0.0.1:"
                    + browser.port()
                    + "\r\n"
                    + known
                    + (post
                        ? "Content-Type: application/x-www-form-urlencoded\r\nContent-Length: "
                            + form.length()
                            + "\r\n"
                        : "")
                    + "Connection: close\r\n\r\n"
                    + (post ? form : ""));
        assertTrue(response.startsWith("HTTP/1.1 403"), start + "\n" + response);
        assertEquals(-1, response.indexOf("Set-Cookie"), response);
      }
    }
  }

  @Override
  public void close() {
    server.stop(0);
  }
}
