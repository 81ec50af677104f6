package org.twinrig.workbench;

import java.io.IOException;
import java.net.BindException;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.thread.QueuedThreadPool;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.Study;

/**
 * A study's workbench: web pages on this machine, served until it is closed. Nothing leaves the
 * machine; whatever the pages confirm stands in the study's own files.
 */
public final class Workbench implements AutoCloseable {
  private static final int MOST_THREADS = 32;

  private final Server server;
  private final Work.Queue queue;
  private final List<String> addresses;
  private final Incoming incoming;
  private final Thread emptying;

  private Workbench(Server server, Work.Queue queue, List<String> addresses, Incoming incoming) {
    this.server = server;
    this.queue = queue;
    this.addresses = List.copyOf(addresses);
    this.incoming = incoming;
    // What was sent goes with the workbench, also where it is stopped from outside.
    this.emptying = new Thread(incoming::close);
    Runtime.getRuntime().addShutdownHook(emptying);
  }

  /**
   * How a workbench is opened: the study's folder or its yaml file, folders confirmed as its data
   * roots, where to listen ({@code 127.0.0.1} keeps it on this machine; port 0 is a free one), the
   * threads to estimate on, the program's version for the record of a run, and who is told what is
   * being done before there is an address to open, and what is a fault of the program.
   */
  public record Options(
      Path study,
      List<Path> dataRoots,
      InetAddress bind,
      int port,
      int threads,
      String version,
      Consumer<String> remarks,
      Consumer<Exception> faults) {}

  /**
   * Takes the port, reads and estimates the study, and begins to response. A port that cannot be
   * had is told before any of the longer work; who comes to it meanwhile waits.
   *
   * @throws UnusableInput when the study cannot be read, or the address cannot be listened on
   * @throws IOException when a file of the study cannot be read
   */
  public static Workbench open(Options options) throws UnusableInput, IOException {
    return open(options, Incoming.Limits.STANDARD);
  }

  static Workbench open(Options options, Incoming.Limits limits) throws UnusableInput, IOException {
    Server server = new Server(new QueuedThreadPool(MOST_THREADS, 4));
    ServerConnector connector = connector(server, options, limits);
    listen(connector, options);
    try {
      StudySession session =
          new StudySession(
              options.study(),
              options.dataRoots(),
              options.threads(),
              s -> options.remarks().accept(beginning(s)));
      return answering(session, server, connector, options, limits);
    } catch (UnusableInput | IOException | RuntimeException e) {
      connector.close();
      throw e;
    }
  }

  private static void listen(ServerConnector connector, Options options)
      throws UnusableInput, IOException {
    try {
      connector.open();
    } catch (IOException e) {
      if (e instanceof BindException || e.getCause() instanceof BindException) {
        throw UnusableInput.fatal(
            "--port",
            0,
            "nothing can listen on " + options.bind().getHostAddress() + ", port " + options.port(),
            "name another port, or leave it out for a free one, and an address of this"
                + " machine");
      }
      throw e;
    }
  }

  private static String beginning(Study study) {
    return "Reading %s of %s and estimating the study; the address to open follows."
        .formatted(
            Numbers.count(study.captures().size(), "capture", "captures"),
            Numbers.count(study.units().size(), "unit", "units"));
  }

  private static Workbench answering(
      StudySession session,
      Server server,
      ServerConnector connector,
      Options options,
      Incoming.Limits limits) {
    Work.Queue queue = new Work.Queue();
    try {
      Incoming incoming = new Incoming(limits);
      Access access = new Access(options.bind(), connector.getLocalPort());
      Pages pages = new Pages(session, queue, access.formToken());
      Refusals refusals = new Refusals(access.formToken(), limits, options.faults());
      server.setHandler(
          new RequestHandler(access, actions(pages, options, incoming), incoming, refusals));
      ErrorHandler plain = new ErrorHandler();
      plain.setShowStacks(false);
      plain.setShowCauses(false);
      server.setErrorHandler(plain);
      server.start();
      String port = ":" + connector.getLocalPort();
      List<String> addresses =
          reached(options.bind()).stream()
              .map(a -> "http://" + Access.literal(a) + port + access.entrance())
              .toList();
      return new Workbench(server, queue, addresses, incoming);
    } catch (RuntimeException e) {
      throw e;
    } catch (Exception e) {
      throw new IllegalStateException("the server did not start", e);
    }
  }

  /** Under which addresses a server is reached: from elsewhere too, where it listens to all. */
  static List<InetAddress> reached(InetAddress bound) throws SocketException {
    if (!bound.isAnyLocalAddress()) {
      return List.of(bound);
    }
    List<InetAddress> all = new ArrayList<>();
    for (NetworkInterface each : NetworkInterface.networkInterfaces().toList()) {
      if (each.isUp()) {
        // An address of one link only means nothing to a browser (RFC 6874, 1).
        each.inetAddresses()
            .filter(a -> !a.isLoopbackAddress() && !a.isLinkLocalAddress())
            .forEach(all::add);
      }
    }
    all.sort(Comparator.comparing(a -> a instanceof Inet6Address));
    return all.isEmpty() ? List.of(InetAddress.getLoopbackAddress()) : all;
  }

  private static ServerConnector connector(Server server, Options options, Incoming.Limits limits) {
    HttpConfiguration http = new HttpConfiguration();
    http.setSendServerVersion(false);
    http.setSendXPoweredBy(false);
    ServerConnector connector = new ServerConnector(server, 1, 1, new HttpConnectionFactory(http));
    connector.setHost(options.bind().getHostAddress());
    connector.setPort(options.port());
    connector.setIdleTimeout(limits.silence().toMillis());
    server.addConnector(connector);
    return connector;
  }

  private static Map<String, RequestHandler.Action> actions(
      Pages pages, Options options, Incoming incoming) {
    FigureCache figures = new FigureCache();
    CapturesPages captures = new CapturesPages(pages, figures);
    StudyPages study = new StudyPages(pages, figures);
    SettingsPages settings = new SettingsPages(pages);
    CataloguePages catalogue = new CataloguePages(pages, options.threads());
    SentPages sent = new SentPages(pages, catalogue, incoming);
    ReportPages report = new ReportPages(pages, options);
    WorkPages work = new WorkPages(pages);
    Map<String, RequestHandler.Action> actions = new HashMap<>();
    actions.put("GET /", captures::contents);
    actions.put("GET /unit", captures::unit);
    actions.put("POST /leave-out", captures::leaveOut);
    actions.put("POST /take-back", captures::takeBack);
    actions.put("POST /confirm", captures::confirm);
    actions.put("POST /doubt-again", captures::doubtAgain);
    DoubtPages doubts = new DoubtPages(pages);
    actions.put("POST /answer", doubts::answer);
    actions.put("POST /open-again", doubts::openAgain);
    actions.put("GET /study", study::study);
    actions.put("POST /undo", study::undo);
    actions.put("POST /reload", study::reload);
    actions.put("GET /settings", settings::settings);
    actions.put("POST /settings", settings::change);
    actions.put("GET /settings-text", settings::text);
    actions.put("POST /settings-text", settings::changeText);
    actions.put("GET /zones", study::zones);
    actions.put("GET /catalogue", catalogue::catalogue);
    actions.put("POST /catalogue", sent::receive);
    actions.put("GET /sent", sent::sent);
    actions.put("POST /sent", sent::state);
    actions.put("POST /catalogue-run", catalogue::run);
    actions.put("POST /answer-graphs", catalogue::answer);
    actions.put("POST /open-graphs-again", catalogue::openAgain);
    actions.put("GET /graph", catalogue::graph);
    actions.put("GET /graph.csv", catalogue::csv);
    actions.put("GET /report", report::report);
    actions.put("POST /report", report::makeReport);
    actions.put("POST /explained", report::makeExplained);
    actions.put("GET /report.html", report::showReport);
    actions.put("GET /explained.html", report::showExplained);
    actions.put("GET /work", work::work);
    actions.put("GET /work-state", work::state);
    actions.put("POST /work-stop", work::cancel);
    actions.put("GET /workbench.css", request -> Response.asset("workbench.css", "text/css"));
    actions.put("GET /icon.svg", request -> Response.asset("icon.svg", "image/svg+xml"));
    actions.put("GET /workbench.js", request -> Response.asset("workbench.js", "text/javascript"));
    return actions;
  }

  /**
   * The links to open, with the session's secrets: more than one where it listens to all addresses
   * of a machine that has several.
   */
  public List<String> addresses() {
    return addresses;
  }

  public void join() throws InterruptedException {
    server.join();
  }

  @Override
  public void close() {
    queue.close();
    try {
      server.stop();
    } catch (Exception e) {
      throw new IllegalStateException("the server did not stop", e);
    }
    Runtime.getRuntime().removeShutdownHook(emptying);
    incoming.close();
  }
}
