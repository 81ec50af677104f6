package org.twinrig.intake;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import org.twinrig.problem.UnusableInput;

/**
 * Where the two chunks that matter lie in a RIFF file. Every size a header states is held against
 * the bytes there are; nothing is allocated by it.
 *
 * <p>Source: Multimedia Programming Interface and Data Specifications 1.0, IBM and Microsoft, 1991,
 * "Resource Interchange File Format" and "Waveform Audio File Format" (from memory).
 */
final class WavChunks {
  static final int HEAD_BYTES = 12;
  private static final int CHUNK_HEAD_BYTES = 8;

  /** Recorders that stream write this, or 0, when they never come back to fill in the size. */
  private static final long UNFINISHED = 0xffff_ffffL;

  private static final String COPY_AGAIN = "copy the file again, or export it again";

  private final ByteBuffer bytes;
  private final Remarks remarks;
  private ByteBuffer format;
  private ByteBuffer data;

  private WavChunks(byte[] bytes, Remarks remarks) {
    this.bytes = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    this.remarks = remarks;
  }

  /** Whether the content is a RIFF file, whatever its name says. */
  static boolean begin(byte[] bytes) {
    return bytes.length >= 4 && name(ByteBuffer.wrap(bytes), 0).equals("RIFF");
  }

  static WavChunks of(byte[] bytes, Remarks remarks) throws UnusableInput {
    WavChunks chunks = new WavChunks(bytes, remarks);
    chunks.checkHead();
    chunks.walk();
    if (chunks.format == null || chunks.data == null) {
      throw remarks.refuse(
          0,
          "the sound file has no '" + (chunks.format == null ? "fmt " : "data") + "' chunk",
          COPY_AGAIN);
    }
    return chunks;
  }

  /** The content of the chunk that says what a sample is. */
  ByteBuffer format() {
    return format;
  }

  /** The samples. */
  ByteBuffer data() {
    return data;
  }

  private void checkHead() throws UnusableInput {
    if (bytes.capacity() < HEAD_BYTES) {
      throw remarks.refuse(0, "the sound file ends within its head", COPY_AGAIN);
    }
    if (!name(bytes, 8).equals("WAVE")) {
      throw remarks.refuse(
          0,
          "the file is of the RIFF family, but holds " + Remarks.excerpt(name(bytes, 8)),
          "export the sound as WAV, or the response as text");
    }
    long stated = size(4) + CHUNK_HEAD_BYTES;
    if (size(4) != UNFINISHED && size(4) != 0 && stated > bytes.capacity() + 1L) {
      throw cutOff("the head promises " + stated + " bytes");
    }
  }

  /** Walks over the chunks, each at an even place. */
  private void walk() throws UnusableInput {
    long at = HEAD_BYTES;
    while (at + CHUNK_HEAD_BYTES <= bytes.capacity()) {
      String name = name(bytes, (int) at);
      long size = size((int) at + 4);
      long start = at + CHUNK_HEAD_BYTES;
      if (name.equals("data") && (size == UNFINISHED || size == 0)) {
        throw remarks.refuse(
            0,
            "the sound file states no size for its samples: the recording was not finished",
            "open it in a sound editor and save it again");
      }
      if (start + size > bytes.capacity()) {
        throw cutOff("the chunk " + Remarks.excerpt(name) + " promises " + size + " bytes");
      }
      keep(name, bytes.slice((int) start, (int) size).order(ByteOrder.LITTLE_ENDIAN));
      at = start + size + size % 2;
    }
    if (at < bytes.capacity()) {
      remarks.note(0, "bytes after the last chunk were left out");
    }
  }

  private void keep(String name, ByteBuffer content) throws UnusableInput {
    boolean twice = name.equals("fmt ") ? format != null : name.equals("data") && data != null;
    if (twice) {
      throw remarks.refuse(
          0, "the sound file has two chunks '" + name + "'", "export one recording per file");
    }
    switch (name) {
      case "fmt " -> format = content;
      case "data" -> data = content;
      default -> {}
    }
  }

  private UnusableInput cutOff(String promise) {
    return remarks.refuse(
        0,
        "the sound file is cut off: " + promise + ", but the file has " + bytes.capacity(),
        COPY_AGAIN);
  }

  private long size(int at) {
    return Integer.toUnsignedLong(bytes.getInt(at));
  }

  /** Four characters; what cannot be printed stands as a question mark. */
  private static String name(ByteBuffer bytes, int at) {
    byte[] four = new byte[4];
    bytes.get(at, four);
    return new String(four, StandardCharsets.ISO_8859_1).replaceAll("[^ -~]", "?");
  }
}
