package org.twinrig.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * The lines of a journal, cut as bytes: a kill may leave half a letter, and a disk a line that
 * never ends.
 */
final class JournalLines {
  /** A graph on a thousand bands, with notes, takes a tenth of it. */
  private static final int LONGEST = 1 << 20;

  private final InputStream in;
  private final byte[] block = new byte[1 << 16];
  private int at;
  private int end;

  JournalLines(InputStream in) {
    this.in = in;
  }

  /** The next line; empty when it is too long to be one of ours; nothing behind the last. */
  Optional<String> next() throws IOException {
    if (!more()) {
      return Optional.empty();
    }
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    boolean fits = true;
    boolean ended = false;
    while (!ended && more()) {
      int stop = lineEnd();
      fits = fits && line.size() + stop - at <= LONGEST;
      if (fits) {
        line.write(block, at, stop - at);
      }
      ended = stop < end;
      at = ended ? stop + 1 : stop;
    }
    return Optional.of(fits ? line.toString(StandardCharsets.UTF_8) : "");
  }

  private int lineEnd() {
    int stop = at;
    while (stop < end && block[stop] != '\n') {
      stop++;
    }
    return stop;
  }

  private boolean more() throws IOException {
    if (at == end) {
      end = Math.max(0, in.read(block));
      at = 0;
    }
    return at < end;
  }
}
