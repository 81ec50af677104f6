package org.twinrig.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.Writer;
import org.twinrig.internal.Printable;

/**
 * The last door to a terminal: letters that would steer it become question marks, whatever they
 * come from, and output that is lost is known at the next flush.
 */
final class Shown extends Writer {
  private final PrintWriter raw;

  private Shown(PrintWriter raw) {
    this.raw = raw;
  }

  /** A writer of whole texts, flushed line by line; its {@code checkError} tells of lost output. */
  static PrintWriter on(PrintWriter raw) {
    return new PrintWriter(new Shown(raw), true);
  }

  @Override
  public void write(char[] text, int from, int length) {
    char[] shown = new char[length];
    for (int k = 0; k < length; k++) {
      char c = text[from + k];
      boolean lineEnd = c == '\n' || (c == '\r' && k + 1 < length && text[from + k + 1] == '\n');
      shown[k] = lineEnd || c == '\t' || Character.isSurrogate(c) || Printable.isShown(c) ? c : '?';
    }
    raw.write(shown, 0, length);
  }

  @Override
  public void flush() throws IOException {
    if (raw.checkError()) { // which flushes
      throw new IOException("not everything could be written");
    }
  }

  @Override
  public void close() {
    raw.close();
  }
}
