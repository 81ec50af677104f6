package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.net.CookieManager;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Bodies that come slowly, or not to their end. */
class IncomingTest {
  private static final Duration LONG = Duration.ofHours(1);
  private static final String SLOW =
      "stopped coming for 0 seconds, or took longer than 60 minutes. Nothing was changed; send it"
          + " again, or fewer files at once.";

  private static final byte[] LARGE = new byte[29 * 1024 * 1024 / 8];

  @TempDir Path folder;
  private Browser browser;

  private void open(Incoming.Limits limits) throws Exception {
    Browser.write(folder.resolve("study"));
    browser = Browser.on(folder.resolve("study"), limits);
  }

  @AfterEach
  void close() {
    if (browser == null) {
      return;
    }
    browser.close();
    assertEquals(List.of(), browser.faults());
  }

  /**
   * What is answered; who answers before a body has ended may leave the connection open a while.
   */
  private static String told(Socket socket) throws IOException {
    StringBuilder told = new StringBuilder();
    InputStream in = socket.getInputStream();
    int b = in.read();
    while (b >= 0) {
      told.append((char) b);
      b = told.indexOf("</html>") < 0 ? in.read() : -1;
    }
    return told.toString();
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
            + "\r\nContent-Length: 100000\r\nConnection: close\r\nExpect: 100-continue\r\n\r\n";
    socket.getOutputStream().write(head.getBytes(StandardCharsets.ISO_8859_1));
    // The server says that it is reading this very body (RFC 9110, 10.1.1).
    String reading = "HTTP/1.1 100 Continue\r\n\r\n";
    byte[] said = socket.getInputStream().readNBytes(reading.length());
    assertEquals(reading, new String(said, StandardCharsets.ISO_8859_1));
    socket.getOutputStream().write("revision=1&".getBytes(StandardCharsets.ISO_8859_1));
    return socket;
  }

  private Socket sender() throws Exception {
    return sender("/undo", "application/x-www-form-urlencoded");
  }

  /** More senders than the server has threads; none of them ever comes to its end. */
  @Test
  void slowSendersKeepNobodyFromThePages() throws Exception {
    open(new Incoming.Limits(LONG, LONG, 1, LONG, 1 << 30));
    browser.formToken();
    List<Socket> senders = new ArrayList<>();
    try {
      for (int k = 0; k < 120; k++) {
        senders.add(
            k % 2 == 0 ? sender() : sender("/catalogue", "multipart/form-data; boundary=xyz"));
      }
      for (String path : List.of("/", "/study", "/zones", "/workbench.css")) {
        HttpRequest request = browser.request(path).timeout(Duration.ofSeconds(20)).build();
        assertEquals(200, browser.send(request).statusCode(), path);
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
    open(new Incoming.Limits(LONG, Duration.ZERO, 1L << 40, LONG, 1 << 30));
    try (Socket socket = sender()) {
      String response = told(socket);
      assertTrue(response.startsWith("HTTP/1.1 408"), response);
      assertTrue(response.contains("What was sent came at less than "), response);
    }
  }

  @Test
  void aBodyHasADeadline() throws Exception {
    open(new Incoming.Limits(LONG, LONG, 1, Duration.ZERO, 1 << 30));
    try (Socket socket = sender()) {
      assertTrue(told(socket).startsWith("HTTP/1.1 408"));
    }
  }

  @Test
  void whoFallsSilentIsToldSo() throws Exception {
    open(new Incoming.Limits(Duration.ofMillis(300), LONG, 1, LONG, 1 << 30));
    try (Socket socket = sender()) {
      String response = told(socket);
      assertTrue(response.startsWith("HTTP/1.1 408"), response);
      assertTrue(response.contains(SLOW), response);
      assertTrue(response.contains("<h1>That came too slowly</h1>"), response);
    }
  }

  /** Whatever is being sent, the small forms of others come through. */
  @Test
  void moreThanAllMaySendTogetherIsRefused() throws Exception {
    open(new Incoming.Limits(LONG, LONG, 1, LONG, 2 << 20));
    HttpResponse<String> refused = browser.upload(Map.of("a.csv", new byte[3 << 20]));
    assertEquals(413, refused.statusCode());
    assertTrue(
        refused
            .body()
            .contains(
                "<p>More than 2 MB are being sent to this workbench just now. Nothing was read;"
                    + " send the files again in a minute.</p>"),
        refused.body());
    assertEquals(303, browser.upload(Map.of("a.csv", new byte[1 << 20])).statusCode());
    try (Socket much = sender("/catalogue", "multipart/form-data; boundary=xyz")) {
      much.getOutputStream().write(new byte[90_000]);
      assertEquals(303, browser.leaveOut(browser.first(), "1", "in between").statusCode());
    }
  }

  /** In a process with the memory the launcher gives it. */
  @Test
  void manyLargeUploadsAtOnceAreTakenInTheDefaultMemory() throws Exception {
    Browser.write(folder.resolve("study"));
    Path temporary = Files.createDirectory(folder.resolve("temporary"));
    Path errors = folder.resolve("errors.txt");
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx400m",
                "-Djava.io.tmpdir=" + temporary,
                "-cp",
                System.getProperty("java.class.path"),
                "org.twinrig.cli.Main",
                "workbench",
                folder.resolve("study").toString(),
                "--quiet")
            .redirectError(errors.toFile())
            .start();
    try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
      String address = out.readLine().replace("Open this in a browser: ", "");
      URI root = URI.create(address).resolve("./");
      CookieManager cookies = new CookieManager();
      HttpClient client = HttpClient.newBuilder().cookieHandler(cookies).build();
      client.send(
          HttpRequest.newBuilder(URI.create(address)).build(),
          HttpResponse.BodyHandlers.discarding());
      String page =
          client
              .send(
                  HttpRequest.newBuilder(root.resolve("report")).build(),
                  HttpResponse.BodyHandlers.ofString())
              .body();
      String formToken = page.replaceFirst("(?s).*name=\"formToken\" value=\"([^\"]+)\".*", "$1");
      List<CompletableFuture<HttpResponse<String>>> all = new ArrayList<>();
      for (int k = 0; k < 16; k++) {
        all.add(
            client.sendAsync(
                HttpRequest.newBuilder(root.resolve("catalogue"))
                    .header("Content-Type", "multipart/form-data; boundary=xyz")
                    .POST(large(formToken))
                    .build(),
                HttpResponse.BodyHandlers.ofString()));
      }
      for (CompletableFuture<HttpResponse<String>> each : all) {
        HttpResponse<String> response = each.get();
        assertEquals(303, response.statusCode(), response.body());
        URI next = root.resolve(response.headers().firstValue("Location").orElseThrow());
        HttpResponse<String> asked =
            client.send(HttpRequest.newBuilder(next).build(), HttpResponse.BodyHandlers.ofString());
        assertEquals(200, asked.statusCode());
        assertTrue(asked.body().contains("<legend>All 8 files</legend>"), asked.body());
      }
    } finally {
      process.destroy();
      process.waitFor();
    }
    assertEquals("", Files.readString(errors));
    try (Stream<Path> left = Files.list(temporary)) {
      assertEquals(
          List.of(),
          left.filter(p -> p.toString().contains("twinrig")).toList(),
          "nothing is left");
    }
  }

  /** Eight files of 29 MB together. */
  private static HttpRequest.BodyPublisher large(String formToken) {
    HttpRequest.BodyPublisher file = HttpRequest.BodyPublishers.ofByteArray(LARGE);
    List<HttpRequest.BodyPublisher> parts = new ArrayList<>();
    parts.add(
        HttpRequest.BodyPublishers.ofString(
            "--xyz\r\nContent-Disposition: form-data; name=\"formToken\"\r\n\r\n"
                + formToken
                + "\r\n"));
    for (int k = 0; k < 8; k++) {
      parts.add(
          HttpRequest.BodyPublishers.ofString(
              "--xyz\r\nContent-Disposition: form-data; name=\"graphs\"; filename=\"g"
                  + k
                  + ".csv\"\r\n\r\n"));
      parts.add(file);
      parts.add(HttpRequest.BodyPublishers.ofString("\r\n"));
    }
    parts.add(HttpRequest.BodyPublishers.ofString("--xyz--\r\n"));
    return HttpRequest.BodyPublishers.concat(parts.toArray(HttpRequest.BodyPublisher[]::new));
  }

  /** The reporter of faults is looked at when all is closed. */
  @Test
  void whoHangsUpIsNoFaultOfTheProgram() throws Exception {
    open(Incoming.Limits.STANDARD);
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
