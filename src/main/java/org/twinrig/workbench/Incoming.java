package org.twinrig.workbench;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Consumer;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.MultiPart;
import org.eclipse.jetty.http.MultiPartConfig;
import org.eclipse.jetty.http.MultiPartFormData;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.io.EofException;
import org.eclipse.jetty.util.Fields;
import org.eclipse.jetty.util.IO;
import org.eclipse.jetty.util.UrlEncoded;
import org.twinrig.workbench.RefusedException.Why;

/**
 * Reads what requests carry. A body goes to the disk as it comes: it takes no memory, and no thread
 * waits for it, so that slow senders keep nobody from the pages. It is read to its end before it is
 * looked at, even where it is too large: a browser that is stopped while it sends shows no message.
 */
public final class Incoming implements AutoCloseable {
  /** A graph is some kilobytes; sound and long sweeps are not old graphs. */
  public static final int MOST_BYTES_A_FILE = 4 * 1024 * 1024;

  public static final int MOST_FILES = 200;
  public static final int MOST_FORM_BYTES = 2 * 1024 * 1024;
  public static final int MEGABYTE = 1024 * 1024;
  public static final int MOST_BYTES_AT_ONCE = 32 * MEGABYTE;
  private static final int MOST_BYTES_DRAINED = 1024 * MEGABYTE;
  private static final int MOST_BYTES_OF_PART_IN_MEMORY = 8 * 1024;
  private static final int MOST_FIELDS = 10 * MOST_FILES;

  private final Limits limits;
  private final AtomicLong bytesOfAll = new AtomicLong();
  private Path home;

  /** What comes in, into a folder that is this user's alone. */
  Incoming(Limits limits) throws IOException {
    this.limits = limits;
    this.home = Files.createTempDirectory("twinrig-workbench");
  }

  synchronized Path folder() throws IOException {
    if (!Files.isDirectory(home, LinkOption.NOFOLLOW_LINKS)) {
      // Systems sweep temporary folders that nobody used for days.
      home = Files.createTempDirectory("twinrig-workbench");
    }
    return Files.createTempDirectory(home, "sent").toRealPath();
  }

  @Override
  public synchronized void close() {
    IO.delete(home);
  }

  /**
   * How slowly a body may come: how long a sender may say nothing and, after a time of grace, fall
   * short of a rate from the beginning on, and how long a body may take in all. And how many bytes
   * of files may be on their way at one time.
   */
  public record Limits(
      Duration silence, Duration grace, long bytesPerSecond, Duration whole, long bytesOfAll) {
    /** Twenty times slower than a poor wireless network, and as much as sixteen labs may send. */
    static final Limits STANDARD =
        new Limits(
            Duration.ofSeconds(30),
            Duration.ofSeconds(10),
            16 * 1024,
            Duration.ofMinutes(5),
            1024L * MEGABYTE);

    private boolean tooSlow(long bytes, Duration elapsed) {
      return elapsed.compareTo(whole) > 0
          || (elapsed.compareTo(grace) > 0 && bytes < bytesPerSecond * (elapsed.toNanos() / 1e9));
    }
  }

  /** What a request without a body asks for. */
  static Request get(org.eclipse.jetty.server.Request http) {
    return new Request(
        fields(org.eclipse.jetty.server.Request.extractQueryParameters(http)), List.of());
  }

  private static Map<String, String> fields(Fields from) {
    Map<String, String> fields = new HashMap<>();
    from.forEach(f -> fields.put(f.getName(), f.getValue() == null ? "" : f.getValue()));
    return fields;
  }

  /**
   * Takes a body.
   *
   * @param then called once, when the body is there or will not come, with what came, or in an
   *     exception why it did not. The files it is given are deleted when it returns; it moves those
   *     that shall stay.
   * @throws IOException when nothing can be written
   */
  void post(org.eclipse.jetty.server.Request http, Consumer<Callable<Request>> then)
      throws IOException {
    new Arrival(http, then).run();
  }

  private final class Arrival implements Runnable {
    private final org.eclipse.jetty.server.Request http;
    private final String type;
    private final boolean parts;
    private final Consumer<Callable<Request>> then;
    private final long began = System.nanoTime();
    private final Path folder;
    private final Path body;
    private final FileChannel file;
    private final AtomicInteger seen = new AtomicInteger();
    private final AtomicInteger kept = new AtomicInteger();
    private Optional<Exception> refused = Optional.empty();

    Arrival(org.eclipse.jetty.server.Request http, Consumer<Callable<Request>> then)
        throws IOException {
      this.http = http;
      this.type = String.valueOf(http.getHeaders().get(HttpHeader.CONTENT_TYPE));
      this.parts = type.startsWith("multipart/form-data");
      this.then = then;
      this.folder = folder();
      this.body = folder.resolve("body");
      this.file = FileChannel.open(body, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
    }

    /** Takes what is there and comes back when there is more; no thread waits meanwhile. */
    @Override
    public void run() {
      boolean last = false;
      while (!last) {
        Content.Chunk chunk = http.read();
        if (chunk == null) {
          http.demand(this);
          return;
        }
        if (Content.Chunk.isFailure(chunk)) {
          Throwable failure = chunk.getFailure();
          refused =
              Optional.of(
                  failure instanceof TimeoutException
                      ? new RefusedException(Why.TOO_SLOW)
                      : new EofException(failure));
          break;
        }
        take(chunk.getByteBuffer());
        last = chunk.isLast();
        chunk.release();
        if (!last && limits.tooSlow(seen.get(), Duration.ofNanos(System.nanoTime() - began))) {
          refused = Optional.of(new RefusedException(Why.TOO_SLOW));
          break;
        }
        last |= seen.get() > MOST_BYTES_DRAINED;
      }
      end();
    }

    private void take(ByteBuffer some) {
      int size = some.remaining();
      int soFar = seen.addAndGet(size);
      if (refused.isPresent()) {
        return;
      }
      try {
        if (soFar > (parts ? MOST_BYTES_AT_ONCE : MOST_FORM_BYTES)) {
          throw new RefusedException(parts ? Why.TOO_MANY_FILES : Why.TOO_MUCH_TEXT);
        }
        kept.addAndGet(size);
        // Forms are small: however much is being sent, they come through.
        if (bytesOfAll.addAndGet(size) > limits.bytesOfAll() && parts) {
          throw new RefusedException(Why.TOO_MUCH_TOGETHER);
        }
        while (some.hasRemaining()) {
          file.write(some);
        }
      } catch (RefusedException e) {
        refused = Optional.of(e);
      } catch (IOException e) {
        refused = Optional.of(new FileSystemException("the page's form", null, e.getMessage()));
      }
    }

    private void end() {
      try {
        then.accept(this::request);
      } finally {
        bytesOfAll.addAndGet(-kept.get());
        try {
          file.close();
          Upload.delete(folder);
        } catch (IOException e) {
          refused = Optional.of(e); // what is left goes with the home folder, at the end
        }
      }
    }

    private Request request() throws Exception {
      if (refused.isPresent()) {
        throw refused.get();
      }
      file.close();
      Map<String, String> fields = new HashMap<>();
      List<Request.SentFile> files = new ArrayList<>();
      try {
        if (parts) {
          read(fields, files);
        } else {
          fields.putAll(form());
        }
      } catch (RuntimeException e) {
        throw Request.unusable("the form did not arrive whole", "send it again");
      }
      if (files.size() > MOST_FILES) {
        throw new RefusedException(Why.TOO_MANY_FILES);
      }
      return new Request(fields, files);
    }

    private Map<String, String> form() throws IOException {
      Fields sent = new Fields(true);
      try (InputStream in = Files.newInputStream(body)) {
        UrlEncoded.decodeUtf8To(in, sent, MOST_FORM_BYTES, MOST_FIELDS);
      }
      return fields(sent);
    }

    private void read(Map<String, String> fields, List<Request.SentFile> files)
        throws IOException, RefusedException {
      MultiPartConfig limits =
          new MultiPartConfig.Builder()
              .location(folder)
              .maxParts(MOST_FIELDS)
              .maxSize(MOST_BYTES_AT_ONCE)
              .maxPartSize(MOST_BYTES_AT_ONCE)
              .maxMemoryPartSize(MOST_BYTES_OF_PART_IN_MEMORY)
              .useFilesForPartsWithoutFileName(true)
              .build();
      long inFields = 0;
      try (MultiPartFormData.Parts all =
          MultiPartFormData.getParts(Content.Source.from(body), http, type, limits)) {
        for (MultiPart.Part part : all) {
          if (part.getFileName() == null) {
            inFields += part.getLength();
            if (inFields > MOST_FORM_BYTES) {
              throw new RefusedException(Why.TOO_MUCH_TEXT);
            }
            fields.put(part.getName(), part.getContentAsString(StandardCharsets.UTF_8));
          } else if (!part.getFileName().isBlank()) {
            files.add(file(part, files.size()));
          }
        }
      }
    }

    private Request.SentFile file(MultiPart.Part part, int number)
        throws IOException, RefusedException {
      if (part.getLength() > MOST_BYTES_A_FILE) {
        throw new RefusedException(Why.TOO_MANY_FILES);
      }
      Path file = folder.resolve("file-" + number);
      part.writeTo(file);
      return new Request.SentFile(part.getFileName(), file, part.getLength());
    }
  }
}
