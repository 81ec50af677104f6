package org.twinrig.workbench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;
import org.twinrig.translation.Translation;

/**
 * Files that are sent. They wait on the disk until their sender has said what they are; a
 * catalogue.csv among them says it at once.
 */
final class SentPages {
  private static final int MOST_WAITING = 32;
  private static final long MOST_BYTES_WAITING = 1024L * 1024 * 1024;

  private final Pages pages;
  private final CataloguePages catalogue;
  private final Incoming incoming;
  private final TreeMap<Long, Upload> waiting = new TreeMap<>();
  private long count;

  SentPages(Pages pages, CataloguePages catalogue, Incoming incoming) {
    this.pages = pages;
    this.catalogue = catalogue;
    this.incoming = incoming;
  }

  Response receive(Request request) throws IOException, UnusableInput {
    Upload upload = Upload.of(request.files(), incoming);
    if (!upload.stated()) {
      return Response.seeOther("./sent?upload=" + keep(upload));
    }
    try {
      return catalogue.run(upload, () -> new Statement(upload).byTable());
    } catch (UnusableInput e) {
      upload.delete();
      throw e;
    }
  }

  private synchronized long keep(Upload upload) throws IOException {
    count++;
    waiting.put(count, upload);
    while (waiting.size() > 1
        && (waiting.size() > MOST_WAITING
            || waiting.values().stream().mapToLong(Upload::bytes).sum() > MOST_BYTES_WAITING)) {
      waiting.pollFirstEntry().getValue().delete();
    }
    return count;
  }

  Response sent(Request request) throws IOException, UnusableInput {
    Map<String, String> all = Map.of("kind", Translation.UNKNOWN_KIND, "form", "raw");
    List<Map<String, String>> own = Collections.nCopies(upload(request).names().size(), Map.of());
    return form(200, request, List.of(), all, own);
  }

  synchronized Response state(Request request) throws IOException, UnusableInput {
    Upload upload = upload(request);
    Map<String, String> all = said(request, "all");
    List<Map<String, String>> own = new ArrayList<>();
    for (int k = 0; k < upload.files().size(); k++) {
      own.add(said(request, "f" + k));
    }
    var read = new Statement(upload).byForm(all, own);
    if (!read.problems().isEmpty()) {
      return form(400, request, read.problems(), all, own);
    }
    Response watched = catalogue.run(upload, () -> read); // busy: they may be tried again
    waiting.remove(request.number("upload"));
    return watched;
  }

  private synchronized Upload upload(Request request) throws UnusableInput {
    return Optional.ofNullable(waiting.get(request.number("upload")))
        .orElseThrow(
            () ->
                Request.unusable(
                    "these files are not here any more",
                    "go to the old graphs and send them again"));
  }

  private static Map<String, String> said(Request request, String prefix) {
    Map<String, String> said = new HashMap<>();
    Statement.ASKED.forEach(column -> said.put(column, request.text(prefix + "-" + column)));
    return said;
  }

  private Response form(
      int status,
      Request request,
      List<Problem> problems,
      Map<String, String> all,
      List<Map<String, String>> own)
      throws IOException, UnusableInput {
    long number = request.number("upload");
    List<String> names = upload(request).names();
    String here = "./sent?upload=" + number;
    return Pages.fill(
        status,
        "sent.jte",
        Map.of(
            "frame", pages.frame(Frame.Part.CATALOGUE, "What these files are", here),
            "number", number,
            "problems", problems,
            "names", names,
            "all", all,
            "own", own));
  }
}
