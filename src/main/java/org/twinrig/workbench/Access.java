package org.twinrig.workbench;

import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.eclipse.jetty.http.HttpCookie;
import org.twinrig.workbench.RefusedException.Why;

/**
 * Who may come in. Every request must name this server as its host (against names that were made to
 * lead here, RFC 9110, 7.2), must not come from another page (RFC 6454), must lie below a path that
 * nobody can guess and must carry the session's secret, once in the address and from then on in a
 * cookie. What changes anything must besides carry a form token: another secret, which only the
 * session's own pages hold. So a browser that says nothing of where a form comes from is let in,
 * and no other page is.
 *
 * <p>Threats: a cookie goes to every port of a host (RFC 6265, 8.5), where other users of the
 * machine may listen, so this one is bound to the session's path, which no other server can lead a
 * browser to and which no page tells in a referrer. Whoever sees the address of a page (a browser's
 * history, a printed page, a picture of the screen) has the path without the cookie, and is not let
 * in with it. Whoever has the whole printed link is let in, and nothing here keeps out who reads
 * this user's files or browser, or, once it listens beyond this machine, who reads along on the
 * network.
 */
final class Access {
  /** The field of a form that holds its token. */
  static final String FORM_TOKEN = "formToken";

  /** Where the token is given for the cookie. */
  static final String ENTER = "/enter";

  private static final int SECRET_BYTES = 32;

  private static final Pattern SIX = Pattern.compile("(\\[[0-9a-f:.]{2,45}])(:[0-9]{1,5})");

  private final String place;
  private final String token;
  private final String session;
  private final String formToken;
  private final Set<String> hosts;
  private final String cookie;

  Access(InetAddress bound, int port) throws SocketException {
    Set<String> names = new HashSet<>();
    if (bound.isLoopbackAddress() || bound.isAnyLocalAddress()) {
      names.addAll(List.of("127.0.0.1", "localhost", "[0:0:0:0:0:0:0:1]"));
    }
    if (bound.isAnyLocalAddress()) {
      NetworkInterface.networkInterfaces()
          .flatMap(NetworkInterface::inetAddresses)
          .forEach(a -> names.add(literal(a)));
    } else {
      names.add(literal(bound));
    }
    hosts = names.stream().map(name -> name + ":" + port).collect(Collectors.toSet());
    cookie = "twinrig-" + port;
    SecureRandom random = new SecureRandom();
    place = secret(random);
    token = secret(random);
    session = secret(random);
    formToken = secret(random);
  }

  /** An address as it stands in a link; never a name, which could be made to lead elsewhere. */
  static String literal(InetAddress address) {
    String text = address.getHostAddress();
    int zone = text.indexOf('%');
    String plain = zone < 0 ? text : text.substring(0, zone);
    return plain.indexOf(':') < 0 ? plain : "[" + plain + "]";
  }

  /** A host as {@link #literal} writes it: an address of version 6 may be written in many ways. */
  @SuppressWarnings("AddressSelection") // one literal is one address
  private static String plain(String host) {
    String small = host.toLowerCase(Locale.ROOT);
    Matcher six = SIX.matcher(small);
    if (!six.matches()) {
      return small;
    }
    try {
      return literal(InetAddress.getByName(six.group(1))) + six.group(2); // digits: asks no server
    } catch (UnknownHostException e) {
      return small;
    }
  }

  /** The path, and query, by which the session is entered. */
  String entrance() {
    return "/" + place + ENTER + "?token=" + token;
  }

  /** What is asked for below the session's path; nothing when a path does not lie there. */
  Optional<String> inside(String path) {
    int end = path.indexOf('/', 1);
    return end > 0 && same(place, path.substring(1, end))
        ? Optional.of(path.substring(end))
        : Optional.empty();
  }

  /** What the forms of this session carry. */
  String formToken() {
    return formToken;
  }

  /** Whether a form's token is the one this session gave out. */
  boolean issued(String given) {
    return same(formToken, given);
  }

  HttpCookie pass() {
    return HttpCookie.build(cookie, session)
        .httpOnly(true)
        .path("/" + place + "/")
        .sameSite(HttpCookie.SameSite.STRICT)
        .build();
  }

  /** Why a request is turned away; nothing when host and origin are right. */
  Optional<Why> stranger(Function<String, String> header, String method) {
    String host = header.apply("Host");
    if (host == null || !hosts.contains(plain(host))) {
      return Optional.of(Why.OTHER_NAME);
    }
    String origin = header.apply("Origin");
    String site = header.apply("Sec-Fetch-Site");
    boolean post = method.equals("POST");
    boolean own = origin != null && origin.equals("http://" + host.toLowerCase(Locale.ROOT));
    // Under "no-referrer" a browser writes "null" for a page's own forms (Fetch, 3.2), and some
    // say nothing at all: then the form token decides.
    boolean silent = origin == null || (post && "null".equals(origin));
    boolean foreign = site != null && !Set.of("same-origin", "none").contains(site);
    boolean navigation = method.equals("GET") && "navigate".equals(header.apply("Sec-Fetch-Mode"));
    return !(own || silent) || (foreign && !navigation)
        ? Optional.of(Why.OTHER_PAGE)
        : Optional.empty();
  }

  boolean knows(String given) {
    return same(token, given);
  }

  /** Whether the session's cookie is among those of a request. */
  boolean admits(List<HttpCookie> cookies) {
    return cookies.stream()
        .anyMatch(c -> c.getName().equals(cookie) && same(session, c.getValue()));
  }

  /** Takes the same time wherever two texts differ. */
  private static boolean same(String secret, String given) {
    return MessageDigest.isEqual(
        secret.getBytes(StandardCharsets.UTF_8), given.getBytes(StandardCharsets.UTF_8));
  }

  private static String secret(SecureRandom random) {
    byte[] bytes = new byte[SECRET_BYTES];
    random.nextBytes(bytes);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }
}
