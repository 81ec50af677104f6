package org.twinrig.workbench;

import gg.jte.output.StringOutput;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.twinrig.report.ResultFolder;
import org.twinrig.report.html.ExplainPage;
import org.twinrig.report.html.Page;

/**
 * A page that was written for the lab, where the command line writes it too, shown from the disk.
 * The address names no file: there is one place for each page, and what lies there is shown only
 * when it is a plain file of ours, no link.
 *
 * @param ours tells whether a text is what this program wrote there
 */
record WrittenPage(Path folder, String name, Ours ours) {
  private static final String REPORT = "report.html";

  @FunctionalInterface
  interface Ours {
    boolean wrote(String text) throws IOException;
  }

  private static final long MOST_BYTES = 64L * 1024 * 1024;

  /**
   * A page of a file is nobody's but its own: without {@code allow-same-origin} it is kept from the
   * workbench's cookie and pages, whoever wrote it; it may run the one script that sorts its
   * tables, and fetch nothing.
   */
  private static final String POLICY =
      "default-src 'none'; style-src 'unsafe-inline'; img-src data:; script-src 'sha256-"
          + hash()
          + "'; form-action 'none'; base-uri 'none'; frame-ancestors 'none';"
          + " sandbox allow-scripts allow-downloads allow-modals";

  /** The report in a folder of results, as their manifest lists it. */
  static WrittenPage report(Path results) {
    return new WrittenPage(
        results, REPORT, text -> ResultFolder.wrote(results, ResultFolder.Kind.STUDY, REPORT));
  }

  static WrittenPage explained(Path study) {
    return new WrittenPage(study, "explained.html", ExplainPage::isAsWritten);
  }

  Path place() {
    return folder.resolve(name);
  }

  /** What it says; nothing when it was not written yet, or something else lies in its place. */
  Optional<String> html() throws IOException {
    Path page = place();
    // Neither the file nor its folder is a link that leads elsewhere.
    boolean plain =
        Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)
            && Files.isRegularFile(page, LinkOption.NOFOLLOW_LINKS);
    if (!plain || Files.size(page) > MOST_BYTES) {
      return Optional.empty();
    }
    try {
      String text = Files.readString(page);
      return ours.wrote(text) ? Optional.of(text) : Optional.empty();
    } catch (NoSuchFileException | CharacterCodingException e) {
      return Optional.empty(); // replaced this moment, or no text: nothing of ours to show
    }
  }

  Response show(String html, boolean download) {
    Map<String, String> headers = new HashMap<>(download ? Response.saved(name) : Map.of());
    headers.put("Content-Security-Policy", POLICY);
    return Response.text("html", html, headers);
  }

  private static String hash() {
    StringOutput script = new StringOutput();
    Page.resource("page.js").writeTo(script);
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256")
              .digest(script.toString().getBytes(StandardCharsets.UTF_8));
      return Base64.getEncoder().encodeToString(digest);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
