package org.twinrig.workbench;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.twinrig.problem.UnusableInput;
import org.twinrig.simulation.SimulatedKind;
import org.twinrig.simulation.SimulationPlan;

/** A workbench over a small simulated study, and someone who uses it as a browser would. */
final class Browser implements AutoCloseable {
  private final Workbench workbench;
  private final HttpClient client;
  private final String cookie;
  private final Path study;
  private final List<Exception> faults;
  private Optional<String> formToken = Optional.empty();

  private Browser(Workbench workbench, Path study, List<Exception> faults) throws Exception {
    this.workbench = workbench;
    this.study = study;
    this.faults = faults;
    this.client = HttpClient.newHttpClient();
    HttpResponse<String> entered =
        client.send(
            HttpRequest.newBuilder(URI.create(workbench.addresses().get(0))).build(),
            HttpResponse.BodyHandlers.ofString());
    this.cookie = entered.headers().firstValue("Set-Cookie").orElseThrow().split(";", -1)[0];
  }

  /** Writes a study of six in-ears into a folder. */
  static void write(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(Drawn.ONCE)) {
      for (Path file : (Iterable<Path>) files::iterator) {
        Files.copy(file, folder.resolve(Drawn.ONCE.relativize(file).toString()));
      }
    }
  }

  /** Drawing takes longer than copying what was drawn. */
  private static final class Drawn {
    static final Path ONCE = once();

    private static Path once() {
      try {
        Path folder = Files.createTempDirectory("twinrig-drawn");
        draw(folder.resolve("study"));
        return folder.resolve("study");
      } catch (UnusableInput | IOException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  private static void draw(Path folder) throws UnusableInput, IOException {
    SimulationPlan.standard()
        .withKinds(SimulatedKind.IN_EAR)
        .withUnitsPerKind(6)
        .withSeatings(3)
        .withBothSidesShare(0)
        .withAxis(new SimulationPlan.Axis(120, 10, 22_000))
        .withCatalogueGraphs(4)
        .withSeed(5)
        .draw()
        .writeTo(folder);
    // Few bands and the plain model keep every estimate quick.
    Files.writeString(
        folder.resolve("study.yaml"),
        Files.readString(folder.resolve("study.yaml"))
            + "bands: { per_octave: 6 }\nmodel: offset\n");
  }

  static Browser on(Path study) throws Exception {
    return on(study, Incoming.Limits.STANDARD);
  }

  static Browser on(Path study, Incoming.Limits limits) throws Exception {
    List<Exception> faults = new CopyOnWriteArrayList<>();
    List<String> said = new CopyOnWriteArrayList<>();
    Workbench workbench =
        Workbench.open(
            new Workbench.Options(
                study,
                List.of(),
                InetAddress.getLoopbackAddress(),
                0,
                2,
                "test",
                said::add,
                faults::add),
            limits);
    return new Browser(workbench, study, faults);
  }

  String address() {
    return workbench.addresses().get(0);
  }

  /** What all pages lie below. */
  String root() {
    return address().substring(0, address().indexOf("/enter"));
  }

  /** Where it is served, without the session's path. */
  String origin() {
    return root().substring(0, root().lastIndexOf('/'));
  }

  /** The session's path. */
  String place() {
    return root().substring(origin().length());
  }

  int port() {
    return URI.create(root()).getPort();
  }

  String cookie() {
    return cookie;
  }

  List<Exception> faults() {
    return faults;
  }

  Path file(String name) {
    return study.resolve(name);
  }

  HttpResponse<String> get(String path) throws Exception {
    return send(request(path).GET().build());
  }

  HttpRequest.Builder request(String path) {
    return HttpRequest.newBuilder(URI.create(root() + path.replaceFirst("^[.]/", "/")))
        .header("Cookie", cookie);
  }

  HttpResponse<String> send(HttpRequest request) throws Exception {
    return client.send(request, HttpResponse.BodyHandlers.ofString());
  }

  /** What the forms of this session carry, as a page shows it. */
  String formToken() throws Exception {
    if (formToken.isEmpty()) {
      Matcher field =
          Pattern.compile("name=\"formToken\" value=\"([^\"]+)\"").matcher(get("/report").body());
      if (!field.find()) {
        throw new IllegalStateException("the form is not signed");
      }
      formToken = Optional.of(field.group(1));
    }
    return formToken.get();
  }

  /** Sends a form as the page's own. */
  HttpResponse<String> post(String path, Map<String, String> fields) throws Exception {
    Map<String, String> signed = new TreeMap<>(fields);
    signed.put(Access.FORM_TOKEN, formToken());
    String body =
        signed.entrySet().stream()
            .map(
                e ->
                    URLEncoder.encode(e.getKey(), StandardCharsets.UTF_8)
                        + "="
                        + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
            .collect(Collectors.joining("&"));
    return send(
        request(path)
            .header("Origin", origin())
            .header("Content-Type", "application/x-www-form-urlencoded")
            .POST(HttpRequest.BodyPublishers.ofString(body))
            .build());
  }

  /** Sends files as the page's own. */
  HttpResponse<String> upload(Map<String, byte[]> files) throws Exception {
    return send(upload(HttpRequest.BodyPublishers.ofByteArray(parts(files))));
  }

  /** Sends files without saying beforehand how much there is. */
  HttpResponse<String> uploadInChunks(Map<String, byte[]> files) throws Exception {
    byte[] whole = parts(files);
    return send(
        upload(HttpRequest.BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(whole))));
  }

  private HttpRequest upload(HttpRequest.BodyPublisher body) {
    return request("/catalogue")
        .header("Origin", origin())
        .header("Content-Type", "multipart/form-data; boundary=xyz")
        .POST(body)
        .build();
  }

  private byte[] parts(Map<String, byte[]> files) throws Exception {
    List<byte[]> parts = new ArrayList<>(List.of(field(Access.FORM_TOKEN, formToken())));
    files.forEach(
        (name, bytes) -> {
          parts.add(
              text(
                  "--xyz\r\nContent-Disposition: form-data; name=\"graphs\"; filename=\""
                      + name
                      + "\"\r\nContent-Type: text/csv\r\n\r\n"));
          parts.add(bytes);
          parts.add(text("\r\n"));
        });
    parts.add(text("--xyz--\r\n"));
    ByteArrayOutputStream whole = new ByteArrayOutputStream();
    parts.forEach(whole::writeBytes);
    return whole.toByteArray();
  }

  /** Says what files are that were just sent. */
  HttpResponse<String> state(HttpResponse<String> sent, Map<String, String> fields)
      throws Exception {
    String place = sent.headers().firstValue("Location").orElseThrow();
    Map<String, String> all = new TreeMap<>(fields);
    all.put("upload", place.substring(place.indexOf('=') + 1));
    return post("/sent", all);
  }

  /** The first capture in the table that a unit's page offers to leave out. */
  record Chosen(String unit, String line, String row) {}

  Chosen first() throws Exception {
    List<String> lines = content("captures.csv").lines().toList();
    String unit = lines.get(1).split(",", -1)[0];
    return new Chosen(unit, "2", lines.get(1));
  }

  HttpResponse<String> leaveOut(Chosen c, String revision, String reason) throws Exception {
    return post(
        "/leave-out",
        Map.of("revision", revision, "line", c.line(), "unit", c.unit(), "reason", reason));
  }

  HttpResponse<String> takeBack(Chosen c, String revision) throws Exception {
    return post("/take-back", Map.of("revision", revision, "line", c.line(), "unit", c.unit()));
  }

  private static byte[] field(String name, String value) {
    return text(
        "--xyz\r\nContent-Disposition: form-data; name=\"" + name + "\"\r\n\r\n" + value + "\r\n");
  }

  private static byte[] text(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** The revision a page was made at. */
  String revision() throws Exception {
    Matcher state = Pattern.compile("state (\\d+)").matcher(get("/").body());
    if (!state.find()) {
      throw new IllegalStateException("the page shows no state");
    }
    return state.group(1);
  }

  /** The response to a request written by hand, byte for byte. */
  String raw(String request) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port())) {
      socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
      socket.getOutputStream().flush();
      InputStream in = socket.getInputStream();
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  /** Waits for longer work and answers where it leads. */
  String finish(HttpResponse<String> begun) throws Exception {
    String place = begun.headers().firstValue("Location").orElseThrow();
    String state = place.replace("/work?", "/work-state?");
    for (int k = 0; k < 600 && !get(state).body().equals("finished"); k++) {
      Thread.sleep(50);
    }
    return place;
  }

  /** What stands in a file. */
  String content(String name) throws IOException {
    return Files.readString(Objects.requireNonNull(file(name), "a file"));
  }

  @Override
  public void close() {
    workbench.close();
  }
}
