package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Bodies that come slowly, or not to their end. */
class IncomingTest {
  private static final Duration LONG = Duration.ofHours(1);
  private static final String SLOW =
      "stopped coming for 0 seconds, or took longer than 60 minutes. Nothing was changed; send it"
          + " again, or fewer files at once.";

  @TempDir Path folder;
  private Browser browser;

  private void open(Incoming.Pace pace) throws Exception {
    Browser.write(folder.resolve("study"));
    browser = Browser.on(folder.resolve("study"), pace);
  }

  @AfterEach
  void close() {
    browser.close();
    assertEquals(List.of(), browser.faults());
  }

  private static String told(Socket socket) throws IOException {
    try (InputStream in = socket.getInputStream()) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /** A sender whose form is announced and does not come to its end. */
  private Socket sender(String path, String type) throws Exception {
    Socket socket = new Socket(InetAddress.getLoopbackAddress(), browser.port());
    socket.setSoTimeout(20_000); // a bound for what would wait for ever
    String head =
        "POST "
            + browser.place()
            + path
            + " HTTP/1.1\r\nHost: 127.0.0.1:"
            + browser.port()
            + "\r\nCookie: "
            + browser.cookie()
            + "\r\nContent-Type: "
            + type
            + "\r\nContent-Length: 100000\r\nConnection: close\r\n\r\nrevision=1&";
    socket.getOutputStream().write(head.getBytes(StandardCharsets.ISO_8859_1));
    socket.getOutputStream().flush();
    return socket;
  }

  private Socket sender() throws Exception {
    return sender("/undo", "application/x-www-form-urlencoded");
  }

  /** More senders than the server has threads; none of them ever comes to its end. */
  @Test
  void slowSendersKeepNobodyFromThePages() throws Exception {
    open(new Incoming.Pace(LONG, LONG, 1, LONG));
    browser.sign();
    List<Socket> senders = new ArrayList<>();
    try {
      for (int k = 0; k < 120; k++) {
        senders.add(
            k % 2 == 0 ? sender() : sender("/catalogue", "multipart/form-data; boundary=xyz"));
      }
      for (String path : List.of("/", "/study", "/zones", "/workbench.css")) {
        HttpRequest ask = browser.request(path).timeout(Duration.ofSeconds(20)).build();
        assertEquals(200, browser.send(ask).statusCode(), path);
      }
      HttpResponse<String> done = browser.leaveOut(browser.first(), "1", "in between");
      assertEquals(303, done.statusCode(), done.body());
    } finally {
      for (Socket each : senders) {
        each.close();
      }
    }
  }

  @Test
  void whoSendsTooSlowlyIsToldSo() throws Exception {
    open(new Incoming.Pace(LONG, Duration.ZERO, 1L << 40, LONG));
    try (Socket socket = sender()) {
      // Less than a millisecond may have passed before the first bytes: no rate is told from that.
      for (int k = 0; k < 100; k++) {
        socket.getOutputStream().write('x');
        socket.getOutputStream().flush();
        Thread.onSpinWait();
      }
      String answer = told(socket);
      assertTrue(answer.startsWith("HTTP/1.1 408"), answer);
      assertTrue(answer.contains("What was sent came at less than "), answer);
    }
  }

  @Test
  void aBodyHasADeadline() throws Exception {
    open(new Incoming.Pace(LONG, LONG, 1, Duration.ZERO));
    try (Socket socket = sender()) {
      assertTrue(told(socket).startsWith("HTTP/1.1 408"));
    }
  }

  @Test
  void whoFallsSilentIsToldSo() throws Exception {
    open(new Incoming.Pace(Duration.ofMillis(300), LONG, 1, LONG));
    try (Socket socket = sender()) {
      String answer = told(socket);
      assertTrue(answer.startsWith("HTTP/1.1 408"), answer);
      assertTrue(answer.contains(SLOW), answer);
      assertTrue(answer.contains("<h1>That came too slowly</h1>"), answer);
    }
  }

  /** The reporter of faults is looked at when all is closed. */
  @Test
  void whoHangsUpIsNoFaultOfTheProgram() throws Exception {
    open(Incoming.Pace.STANDARD);
    byte[] before = Files.readAllBytes(browser.file("captures.csv"));
    for (String path : List.of("/undo", "/catalogue")) {
      try (Socket socket = sender(path, "multipart/form-data; boundary=xyz")) {
        socket.shutdownOutput();
        told(socket);
      }
      try (Socket socket = sender(path, "application/x-www-form-urlencoded")) {
        socket.setSoLinger(true, 0);
      }
    }
    assertEquals(200, browser.get("/").statusCode());
    assertArrayEquals(before, Files.readAllBytes(browser.file("captures.csv")));
  }
}
