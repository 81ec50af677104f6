package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.CookieManager;
import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Nobody but the lab comes in, and nothing but the study is reached. */
class AccessTest {
  @TempDir static Path folder;
  private static Browser browser;

  @BeforeAll
  static void open() throws Exception {
    Browser.write(folder.resolve("study"));
    Files.writeString(folder.resolve("secret.csv"), "nobody may read this");
    browser = Browser.on(folder.resolve("study"));
  }

  @AfterAll
  static void close() {
    browser.close();
  }

  private static HttpResponse<String> bare(String path) throws Exception {
    return HttpClient.newHttpClient()
        .send(
            HttpRequest.newBuilder(URI.create(browser.root() + path)).build(),
            HttpResponse.BodyHandlers.ofString());
  }

  private static String request(String host, String more) throws Exception {
    return browser.raw(
        "GET "
            + browser.place()
            + "/ HTTP/1.1\r\nHost: "
            + host
            + "\r\nCookie: "
            + browser.cookie()
            + "\r\n"
            + more
            + "Connection: close\r\n\r\n");
  }

  private static String send(String headers, String form) throws Exception {
    return browser.raw(
        "POST "
            + browser.place()
            + "/undo HTTP/1.1\r\nHost: 127.0.0.1:"
            + browser.port()
            + "\r\nCookie: "
            + browser.cookie()
            + "\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: "
            + form.length()
            + "\r\n"
            + headers
            + "Connection: close\r\n\r\n"
            + form);
  }

  @Test
  void theAddressOpensIt() throws Exception {
    HttpResponse<String> entered = bare(browser.address().substring(browser.root().length()));
    assertEquals(200, entered.statusCode());
    String cookie = entered.headers().firstValue("Set-Cookie").orElseThrow();
    assertTrue(cookie.contains("HttpOnly"), cookie);
    assertTrue(cookie.contains("SameSite=Strict"), cookie);
    assertTrue(cookie.contains("Path=" + browser.place() + "/"), cookie);
    assertTrue(browser.place().length() > 40, "as many letters as 256 bits take");
    assertEquals(200, browser.get("/").statusCode());
  }

  @Test
  void withoutTokenOrCookieNobodyComesIn() throws Exception {
    HttpResponse<String> refused = bare("/");
    assertEquals(403, refused.statusCode());
    assertTrue(
        refused
            .body()
            .contains(
                "<p>This workbench is open to those who have its address. Open the whole address it"
                    + " printed when it started.</p>"),
        refused.body());
    for (String path : List.of("/enter", "/enter?token=", "/enter?token=wrong", "/workbench.css")) {
      HttpResponse<String> each = bare(path);
      assertEquals(403, each.statusCode(), path);
      assertTrue(each.headers().firstValue("Set-Cookie").isEmpty(), path);
    }
    String almost = browser.address().substring(0, browser.address().length() - 1);
    assertEquals(403, bare(almost.substring(browser.root().length())).statusCode());
  }

  /** A page's address may be seen on paper or in a picture; it does not let in. */
  @Test
  void neitherThePathAloneNorTheCookieAloneLetsIn() throws Exception {
    for (String path : List.of("/", "/study", "/workbench.js", "/report.html")) {
      assertEquals(403, bare(path).statusCode(), path);
    }
    for (String path :
        List.of("/", "/study", "/enter", "", "//", "/" + "A".repeat(43) + "/", browser.place())) {
      String response =
          browser.raw(
              "GET "
                  + (path.isEmpty() ? "*" : path)
                  + " HTTP/1.1\r\nHost: 127.0.0.1:"
                  + browser.port()
                  + "\r\nCookie: "
                  + browser.cookie()
                  + "\r\nConnection: close\r\n\r\n");
      assertTrue(response.matches("(?s)HTTP/1.1 40[03].*"), path + "\n" + response);
    }
  }

  /**
   * A client that keeps cookies as browsers do, by host and path and for all ports, visits a server
   * on another port. What that server got is sent back to the workbench, and refused.
   */
  @Test
  void whatAnotherPortGotLetsNobodyIn() throws Exception {
    byte[] before = Files.readAllBytes(browser.file("captures.csv"));
    try (OtherPort other = new OtherPort()) {
      HttpClient client = HttpClient.newBuilder().cookieHandler(new CookieManager()).build();
      for (String address : List.of(browser.address(), browser.root() + "/study")) {
        HttpRequest request = HttpRequest.newBuilder(URI.create(address)).build();
        assertEquals(
            200, client.send(request, HttpResponse.BodyHandlers.discarding()).statusCode());
      }
      for (String path : List.of("/", "/enter", "/study", "/leave-out", "/x/y/")) {
        HttpRequest request = HttpRequest.newBuilder(URI.create(other.root() + path)).build();
        client.send(request, HttpResponse.BodyHandlers.discarding());
      }
      other.refuted(browser);
    }
    assertArrayEquals(before, Files.readAllBytes(browser.file("captures.csv")));
  }

  @Test
  void anyOtherHostIsRefused() throws Exception {
    assertTrue(request("127.0.0.1:" + browser.port(), "").startsWith("HTTP/1.1 200"));
    assertTrue(request("localhost:" + browser.port(), "").startsWith("HTTP/1.1 200"));
    for (String host :
        List.of(
            "lab.example:" + browser.port(),
            "127.0.0.1",
            "127.0.0.1:1",
            "127.0.0.1.example:" + browser.port(),
            "localhost.:" + browser.port())) {
      String response = request(host, "");
      assertTrue(response.startsWith("HTTP/1.1 403"), host + "\n" + response);
      assertTrue(
          response.contains("This workbench was asked for under a name that is not its own."),
          host);
    }
  }

  @Test
  void aRequestOfAnotherPageIsRefused() throws Exception {
    String own = "http://127.0.0.1:" + browser.port();
    String signed = "revision=1&formToken=" + browser.formToken();
    for (String headers :
        List.of(
            "Origin: null\r\nSec-Fetch-Site: cross-site\r\n",
            "Sec-Fetch-Site: cross-site\r\n",
            "Origin: http://lab.example\r\n",
            "Origin: http://127.0.0.1:1\r\n",
            "Origin: http://localhost:" + browser.port() + "\r\n",
            "Origin: https://127.0.0.1:" + browser.port() + "\r\n",
            "Origin: " + own + "\r\nSec-Fetch-Site: same-site\r\n")) {
      String response = send(headers, signed);
      assertTrue(response.startsWith("HTTP/1.1 403"), headers + "\n" + response);
      assertTrue(
          response.contains(
              "This request comes from another page, not from the workbench itself, and was not"
                  + " carried out."),
          headers);
    }
    assertTrue(
        request("127.0.0.1:" + browser.port(), "Origin: http://lab.example\r\n")
            .startsWith("HTTP/1.1 403"));
  }

  /**
   * Browsers that name no origin, or hide it, are let in by the form's token, and by nothing else.
   */
  @Test
  void aFormIsSignedByThePageItComesFrom() throws Exception {
    String own = "Origin: http://127.0.0.1:" + browser.port() + "\r\n";
    List<String> browsers =
        List.of(
            own,
            own + "Sec-Fetch-Site: same-origin\r\n",
            "Origin: null\r\nSec-Fetch-Site: same-origin\r\n",
            "Origin: null\r\n",
            "");
    for (String headers : browsers) {
      String done = send(headers, "revision=1&formToken=" + browser.formToken());
      assertTrue(done.startsWith("HTTP/1.1 303"), headers + "\n" + done);
      for (String form :
          List.of("revision=1", "revision=1&formToken=", "revision=1&formToken=wrong")) {
        String response = send(headers, form);
        assertTrue(response.startsWith("HTTP/1.1 403"), headers + form + "\n" + response);
        assertTrue(
            response.contains(
                "This form does not come from a page of the workbench that runs now, and was not"
                    + " carried out. Open the page again and send it from there."),
            response);
      }
    }
    assertFalse(browser.address().contains(browser.formToken()), "the form token is not the token");
    assertFalse(browser.cookie().contains(browser.formToken()), "the form token is not the cookie");
  }

  @Test
  void everyAnswerTellsTheBrowserToBeCareful() throws Exception {
    for (HttpResponse<String> response :
        List.of(browser.get("/"), bare("/"), browser.get("/nowhere"), browser.get("/study"))) {
      assertEquals(
          "nosniff", response.headers().firstValue("X-Content-Type-Options").orElseThrow());
      assertEquals("no-referrer", response.headers().firstValue("Referrer-Policy").orElseThrow());
      assertEquals("no-store", response.headers().firstValue("Cache-Control").orElseThrow());
      String policy = response.headers().firstValue("Content-Security-Policy").orElseThrow();
      assertTrue(policy.startsWith("default-src 'none'; script-src 'self'; style-src 'self';"));
      assertFalse(policy.contains("unsafe"));
      assertTrue(response.headers().firstValue("Server").isEmpty());
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/../secret.csv",
        "/%2e%2e/secret.csv",
        "/..%2fsecret.csv",
        "/captures.csv",
        "/study.yaml",
        "/workbench.css/../../secret.csv",
        "//etc/passwd",
        "/.hidden",
        "/unit;x=1"
      })
  void noPathLeadsToAFile(String path) throws Exception {
    String response =
        browser.raw(
            "GET "
                + browser.place()
                + path
                + " HTTP/1.1\r\nHost: 127.0.0.1:"
                + browser.port()
                + "\r\nCookie: "
                + browser.cookie()
                + "\r\nConnection: close\r\n\r\n");
    assertTrue(response.matches("(?s)HTTP/1.1 40[034].*"), response);
    assertFalse(response.contains("nobody may read this"));
    assertFalse(response.contains("fixtures:"));
  }

  /** A name could be made to lead here; an address in digits cannot. */
  @Test
  void whoListensEverywhereStillTakesAddressesOnly() throws Exception {
    Access everywhere = new Access(InetAddress.getByAddress(new byte[4]), 8080);
    for (String host : List.of("127.0.0.1:8080", "localhost:8080", "[::1]:8080")) {
      assertTrue(everywhere.stranger(Map.of("Host", host)::get, "GET").isEmpty(), host);
    }
    for (String host : List.of("lab.example:8080", "0.0.0.0:8080", "192.0.2.1:8080")) {
      assertTrue(everywhere.stranger(Map.of("Host", host)::get, "GET").isPresent(), host);
    }
    InetAddress lab = InetAddress.getByAddress(new byte[] {(byte) 192, 0, 2, 7});
    Access one = new Access(lab, 80);
    assertTrue(one.stranger(Map.of("Host", "192.0.2.7:80")::get, "GET").isEmpty());
    assertTrue(one.stranger(Map.of("Host", "127.0.0.1:80")::get, "GET").isPresent());
    assertTrue(one.stranger(Map.<String, String>of()::get, "GET").isPresent());
    byte[] six = new byte[16];
    six[15] = 1;
    Access loop = new Access(InetAddress.getByAddress(six), 80);
    for (String host : List.of("[::1]:80", "[0:0::1]:80", "[0:0:0:0:0:0:0:1]:80")) {
      assertTrue(loop.stranger(Map.of("Host", host)::get, "GET").isEmpty(), host);
    }
    for (String host : List.of("[::2]:80", "[::1]:81", "[:::]:80", "[::1", "[fe80::1%lo]:80")) {
      assertTrue(loop.stranger(Map.of("Host", host)::get, "GET").isPresent(), host);
    }
  }

  @Test
  void nothingButGetAndPostIsAnswered() throws Exception {
    for (String method : List.of("PUT", "DELETE", "TRACE", "OPTIONS", "HEAD")) {
      HttpResponse<String> response =
          browser.send(
              browser
                  .request("/")
                  .header("Origin", browser.origin())
                  .method(method, HttpRequest.BodyPublishers.noBody())
                  .build());
      assertEquals(404, response.statusCode(), method);
    }
  }
}
