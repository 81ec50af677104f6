package org.twinrig.workbench;

import java.io.IOException;
import java.net.BindException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Path;
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
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.Study;

/**
 * A study's workbench: web pages on this machine, served until it is closed. Nothing leaves the
 * machine; whatever the pages confirm stands in the study's own files.
 */
public final class Workbench implements AutoCloseable {
  private static final int MOST_THREADS = 32;
  private static final int IDLE_MS = 30_000;

  private final Server server;
  private final Works works;
  private final String address;

  private Workbench(Server server, Works works, String address) {
    this.server = server;
    this.works = works;
    this.address = address;
  }

  /**
   * How a workbench is opened.
   *
   * @param study the study's folder, or its yaml file
   * @param dataRoots folders that are confirmed as data roots of the study
   * @param bind where to listen; {@code 127.0.0.1} keeps it on this machine
   * @param port to listen on; 0 takes a free one
   * @param threads to estimate on
   * @param version of the program, for the record of a run
   * @param remarks takes what is being done before there is an address to open
   * @param faults takes what is a fault of the program
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
   * Takes the port, reads and estimates the study, and begins to answer. A port that cannot be had
   * is told before any of the longer work; who comes to it meanwhile waits.
   *
   * @param options how
   * @return the open workbench
   * @throws UnusableInput when the study cannot be read, or the address cannot be listened on
   * @throws IOException when a file of the study cannot be read
   */
  public static Workbench open(Options options) throws UnusableInput, IOException {
    Server server = new Server(new QueuedThreadPool(MOST_THREADS, 4));
    ServerConnector connector = connector(server, options);
    listen(connector, options);
    try {
      Book book =
          Book.open(
              options.study(),
              options.dataRoots(),
              options.threads(),
              s -> options.remarks().accept(beginning(s)));
      return answering(book, server, connector, options);
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
        throw cannotListen(options);
      }
      throw e;
    }
  }

  private static String beginning(Study study) {
    return "Reading "
        + Numbers.count(study.captures().size(), "capture", "captures")
        + " of "
        + Numbers.count(study.units().size(), "unit", "units")
        + " and estimating the study; the address to open follows.";
  }

  private static Workbench answering(
      Book book, Server server, ServerConnector connector, Options options) {
    Works works = new Works();
    try {
      Gate gate = Gate.of(options.bind(), connector.getLocalPort());
      Pages pages = new Pages(gate.sign());
      Refusals refusals = new Refusals(pages, options.faults());
      server.setHandler(new Desk(gate, actions(book, pages, works, options), refusals));
      ErrorHandler plain = new ErrorHandler();
      plain.setShowStacks(false);
      plain.setShowCauses(false);
      server.setErrorHandler(plain);
      server.start();
      InetAddress shown =
          options.bind().isAnyLocalAddress() ? InetAddress.getLoopbackAddress() : options.bind();
      return new Workbench(
          server,
          works,
          "http://"
              + Gate.literal(shown)
              + ":"
              + connector.getLocalPort()
              + "/enter?token="
              + gate.token());
    } catch (RuntimeException e) {
      throw e;
    } catch (Exception e) {
      throw new IllegalStateException("the server did not start", e);
    }
  }

  private static UnusableInput cannotListen(Options options) {
    return new UnusableInput(
        Problem.fatal(
            "--port",
            0,
            "nothing can listen on " + options.bind().getHostAddress() + ", port " + options.port(),
            "name another port, or leave it out for a free one, and an address of this machine"));
  }

  private static ServerConnector connector(Server server, Options options) {
    HttpConfiguration http = new HttpConfiguration();
    http.setSendServerVersion(false);
    http.setSendXPoweredBy(false);
    ServerConnector connector = new ServerConnector(server, 1, 1, new HttpConnectionFactory(http));
    InetSocketAddress place = new InetSocketAddress(options.bind(), options.port());
    connector.setHost(place.getAddress().getHostAddress());
    connector.setPort(place.getPort());
    connector.setIdleTimeout(IDLE_MS);
    server.addConnector(connector);
    return connector;
  }

  private static Map<String, Action> actions(Book book, Pages pages, Works works, Options options) {
    Drawings drawings = new Drawings();
    CapturesPages captures = new CapturesPages(book, pages, drawings);
    StudyPages study = new StudyPages(book, pages, drawings);
    SettingsPages settings = new SettingsPages(book, pages);
    Regraphings regraphings = new Regraphings(works, options.threads());
    CataloguePages catalogue = new CataloguePages(book, pages, regraphings);
    SentPages sent = new SentPages(book, pages, regraphings);
    TextPages text = new TextPages(book, pages);
    ReportPages report = new ReportPages(book, pages, works, options);
    WorkPages work = new WorkPages(book, pages, works);
    Map<String, Action> actions = new HashMap<>();
    actions.put("GET /", captures::contents);
    actions.put("GET /unit", captures::unit);
    actions.put("POST /leave-out", captures::leaveOut);
    actions.put("POST /take-back", captures::takeBack);
    actions.put("GET /study", study::study);
    actions.put("POST /undo", study::undo);
    actions.put("POST /reload", study::reload);
    actions.put("GET /settings", settings::settings);
    actions.put("POST /settings", settings::change);
    actions.put("GET /settings-text", text::text);
    actions.put("POST /settings-text", text::change);
    actions.put("GET /zones", new ZonesPages(book, pages, drawings)::zones);
    actions.put("GET /catalogue", catalogue::catalogue);
    actions.put("POST /catalogue", sent::receive);
    actions.put("GET /sent", sent::sent);
    actions.put("POST /sent", sent::state);
    actions.put("POST /catalogue-run", catalogue::run);
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
    actions.put("GET /workbench.css", ask -> Assets.of("workbench.css", "text/css"));
    actions.put("GET /icon.svg", ask -> Assets.of("icon.svg", "image/svg+xml"));
    actions.put("GET /workbench.js", ask -> Assets.of("workbench.js", "text/javascript"));
    return actions;
  }

  /**
   * The address to open, with the session's token.
   *
   * @return a link
   */
  public String address() {
    return address;
  }

  /**
   * Waits until the workbench is closed.
   *
   * @throws InterruptedException when the waiting thread is
   */
  public void join() throws InterruptedException {
    server.join();
  }

  /** Stops listening and any longer work. */
  @Override
  public void close() {
    works.close();
    try {
      server.stop();
    } catch (Exception e) {
      throw new IllegalStateException("the server did not stop", e);
    }
  }
}
