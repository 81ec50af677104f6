package org.twinrig.notebooks;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import javax.imageio.ImageIO;

/**
 * Takes what cells print and display. Cells run in this process but are compiled on their own: they
 * find the one recorder that is on through a static field.
 */
public final class Recorder implements AutoCloseable {
  private static final AtomicReference<Recorder> ON = new AtomicReference<>();

  private final PrintStream standard = System.out;
  private final ByteArrayOutputStream printed = new ByteArrayOutputStream();
  private final List<CellOutput> outputs = new ArrayList<>();

  private Recorder() {}

  static Recorder on() {
    Recorder recorder = new Recorder();
    if (!ON.compareAndSet(null, recorder)) {
      throw new IllegalStateException("one notebook runs at a time");
    }
    System.setOut(new PrintStream(recorder.printed, true, StandardCharsets.UTF_8));
    return recorder;
  }

  /**
   * What a Java kernel's {@code display} does: shows a picture under the cell.
   *
   * @param shown the picture; nothing else is displayed in our notebooks
   * @return a text, as kernels do
   */
  public static String display(Object shown) {
    if (!(shown instanceof BufferedImage picture)) {
      throw new IllegalArgumentException("only pictures are displayed, not " + shown.getClass());
    }
    ON.get().take(picture);
    return "";
  }

  private void take(BufferedImage picture) {
    text().ifPresent(outputs::add);
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    try {
      ImageIO.write(picture, "png", png);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    outputs.add(CellOutput.Picture.of(png.toByteArray()));
  }

  private Optional<CellOutput> text() {
    String text = printed.toString(StandardCharsets.UTF_8).replace(System.lineSeparator(), "\n");
    printed.reset();
    return text.isEmpty() ? Optional.empty() : Optional.of(new CellOutput.Text(text));
  }

  /** Everything since the last call. */
  List<CellOutput> taken() {
    text().ifPresent(outputs::add);
    List<CellOutput> all = List.copyOf(outputs);
    outputs.clear();
    return all;
  }

  @Override
  public void close() {
    System.setOut(standard);
    ON.set(null);
  }
}
