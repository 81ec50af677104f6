package org.twinrig.workbench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentSkipListMap;
import org.twinrig.internal.Numbers;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.study.ReferenceCurve;
import org.twinrig.translation.Translation;
import org.twinrig.workbench.view.Frame;
import org.twinrig.workbench.view.SentView;

/**
 * Files that are sent. They wait on the disk until their sender has said what they are; a
 * catalogue.csv among them says it at once.
 */
final class SentPages {
  private static final int MOST_WAITING = 32;
  private static final long MOST_BYTES_WAITING = 1024L * 1024 * 1024;

  private final Book book;
  private final Pages pages;
  private final Regraphings regraphings;
  private final Incoming incoming;
  private final ConcurrentSkipListMap<Long, Parcel> waiting = new ConcurrentSkipListMap<>();
  private long count;

  /**
   * Pages.
   *
   * @param incoming keeps what was sent
   */
  SentPages(Book book, Pages pages, Regraphings regraphings, Incoming incoming) {
    this.book = book;
    this.pages = pages;
    this.regraphings = regraphings;
    this.incoming = incoming;
  }

  Answer receive(Ask ask) throws IOException, UnusableInput {
    Parcel parcel = Parcel.of(ask.files(), incoming);
    if (!parcel.stated()) {
      return Answer.seeOther("./sent?parcel=" + keep(parcel));
    }
    try {
      return run(parcel, () -> Statement.byTable(parcel));
    } catch (UnusableInput e) {
      Regraphing.delete(parcel.folder());
      throw e;
    }
  }

  private synchronized long keep(Parcel parcel) throws IOException {
    count++;
    waiting.put(count, parcel);
    while (waiting.size() > 1
        && (waiting.size() > MOST_WAITING
            || waiting.values().stream().mapToLong(Parcel::bytes).sum() > MOST_BYTES_WAITING)) {
      Map.Entry<Long, Parcel> oldest = waiting.pollFirstEntry();
      if (oldest != null) {
        Regraphing.delete(oldest.getValue().folder());
      }
    }
    return count;
  }

  Answer sent(Ask ask) throws IOException, UnusableInput {
    Map<String, String> all = new HashMap<>(Map.of("kind", Translation.UNKNOWN_KIND));
    all.put("form", "raw");
    Parcel parcel = parcel(ask);
    List<Map<String, String>> own =
        parcel.names().stream().map(n -> Map.<String, String>of()).toList();
    return Answer.page(pages.fill("sent.jte", view(ask, List.of(), all, own)));
  }

  Answer state(Ask ask) throws IOException, UnusableInput {
    Parcel parcel = parcel(ask);
    Map<String, String> all = said(ask, "all");
    List<Map<String, String>> own = new ArrayList<>();
    for (int k = 0; k < parcel.files().size(); k++) {
      own.add(said(ask, "f" + k));
    }
    List<Problem> problems = problems(parcel, all, own);
    if (!problems.isEmpty()) {
      return Answer.page(
          400,
          pages.fill(
              "sent.jte", view(ask, problems.stream().map(Problem::text).toList(), all, own)));
    }
    if (!waiting.remove(ask.number("parcel"), parcel)) {
      throw gone();
    }
    try {
      return run(parcel, () -> Statement.byForm(parcel, parcel.folder(), all, own));
    } catch (UnusableInput e) {
      waiting.put(ask.number("parcel"), parcel); // busy: they may be tried again
      throw e;
    }
  }

  /** What the reader of catalogues says of a form, before any work is begun. */
  private static List<Problem> problems(
      Parcel parcel, Map<String, String> all, List<Map<String, String>> own)
      throws IOException, UnusableInput {
    Path folder = Files.createTempDirectory("twinrig-statement");
    try {
      return Statement.byForm(parcel, folder, all, own).problems();
    } finally {
      Regraphing.delete(folder);
    }
  }

  private Answer run(Parcel parcel, Regraphing.Reading reading) throws UnusableInput {
    Leaf leaf = book.leaf();
    return regraphings.begin(
        "Re-expressing "
            + Numbers.count(parcel.files().size(), "file", "files")
            + " that were sent",
        run -> Regraphing.ofParcel(leaf, parcel, reading, run));
  }

  private Parcel parcel(Ask ask) throws UnusableInput {
    return Optional.ofNullable(waiting.get(ask.number("parcel"))).orElseThrow(SentPages::gone);
  }

  private static UnusableInput gone() {
    return new UnusableInput(
        Problem.fatal(
            "the page",
            0,
            "these files are not here any more",
            "go to the old graphs and send them again"));
  }

  private static Map<String, String> said(Ask ask, String prefix) {
    Map<String, String> said = new HashMap<>();
    Statement.ASKED.forEach(column -> said.put(column, ask.text(prefix + "-" + column)));
    return said;
  }

  private SentView view(
      Ask ask, List<String> problems, Map<String, String> all, List<Map<String, String>> own)
      throws IOException, UnusableInput {
    Parcel parcel = parcel(ask);
    Leaf leaf = book.leaf();
    List<String> kinds = new ArrayList<>(List.of(Translation.UNKNOWN_KIND));
    leaf.outcome().ifPresent(o -> o.kinds().forEach(k -> kinds.add(k.kind())));
    List<SentView.Said> files = new ArrayList<>();
    for (int k = 0; k < own.size(); k++) {
      files.add(shown("f" + k, parcel.names().get(k), own.get(k)));
    }
    long number = ask.number("parcel");
    return new SentView(
        pages.frame(
            book, leaf, Frame.Part.CATALOGUE, "What these files are", "./sent?parcel=" + number),
        number,
        problems,
        shown("all", "", all),
        files,
        kinds,
        references(leaf, parcel));
  }

  private static List<SentView.Option> references(Leaf leaf, Parcel parcel) {
    List<SentView.Option> references = new ArrayList<>();
    ReferenceCurve own = leaf.study().references().get(leaf.study().from().name());
    references.add(
        new SentView.Option(
            Statement.OWN_REFERENCE,
            own == null ? "the study's own: none" : "the study's own: " + own.file()));
    parcel.names().forEach(n -> references.add(new SentView.Option(n, n + ", sent along")));
    return references;
  }

  private static SentView.Said shown(String prefix, String name, Map<String, String> said) {
    return new SentView.Said(
        prefix,
        name,
        said.getOrDefault("kind", ""),
        said.getOrDefault("seatings", ""),
        said.getOrDefault("sides", ""),
        said.getOrDefault("form", ""),
        said.getOrDefault("reference", ""),
        said.getOrDefault("reference_smoothing", ""),
        said.getOrDefault("smoothing", ""));
  }
}
