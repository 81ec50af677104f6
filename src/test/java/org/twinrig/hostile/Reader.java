package org.twinrig.hostile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.twinrig.capture.Side;
import org.twinrig.intake.CaptureFile;
import org.twinrig.intake.Reading;
import org.twinrig.problem.UnusableInput;
import org.twinrig.spectrum.ImpulseWindow;
import org.twinrig.spectrum.SoundContent;
import org.twinrig.spectrum.Sweep;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;
import org.twinrig.study.StudyText;
import org.twinrig.translation.Sealed;
import org.twinrig.translation.Translation;
import org.twinrig.translation.TranslationFile;

/**
 * The readers of the program. Each is given one file that may hold anything, and must answer with a
 * value whose numbers are all finite or with problems a person can read; whatever else it throws is
 * a fault of the program.
 */
public enum Reader {
  /** A capture as text. */
  CAPTURE("capture") {
    @Override
    void read(Lab lab, byte[] content) throws IOException {
      capture(lab, content, SoundContent.defaults(), Side.M);
    }
  },

  /** A capture as sound: an impulse response, and the recording of a sweep. */
  SOUND("sound") {
    @Override
    void read(Lab lab, byte[] content) throws IOException {
      ImpulseWindow window = new ImpulseWindow(1, 5, 0.5);
      SoundContent impulse = new SoundContent(window, Optional.empty());
      capture(lab, content, impulse, Side.M);
      capture(lab, content, impulse, Side.R);
      capture(
          lab,
          content,
          new SoundContent(window, Optional.of(new Sweep(200, 20_000, 0.02, 1, 1))),
          Side.L);
    }
  },

  /** The study.yaml of a study whose tables are sound. */
  YAML("yaml") {
    @Override
    void read(Lab lab, byte[] content) throws IOException {
      Files.write(lab.file("study.yaml"), content);
      Optional<Study> study = Tables.study(lab, "study.yaml", content);
      if (study.isPresent()) {
        checkRewritten(lab, study.get(), content);
      }
    }

    /** One value written anew leaves all others as they were. */
    private void checkRewritten(Lab lab, Study study, byte[] content) throws IOException {
      int bom = content.length > 2 && content[0] == (byte) 0xEF ? 3 : 0;
      String text = new String(content, bom, content.length - bom, StandardCharsets.UTF_8);
      Files.writeString(lab.file("study.yaml"), new StudyText(text).with("seed", "77").text());
      try {
        Study again = StudyReader.read(lab.study()).value();
        assertEquals(77, again.settings().seed());
        assertEquals(study.settings().tolerance(), again.settings().tolerance());
        assertEquals(study.title(), again.title());
        assertEquals(study.captures(), again.captures());
        assertEquals(study.settings().zones(), again.settings().zones());
      } catch (UnusableInput e) {
        throw new AssertionError("the rewritten study cannot be read", e);
      }
    }
  },

  /** A table: of units, captures, sessions or old graphs, whichever its header says. */
  TABLE("table") {
    @Override
    void read(Lab lab, byte[] content) throws IOException {
      Tables.read(lab, content);
    }
  },

  /** A translation.json. */
  TRANSLATION("translation") {
    @Override
    void read(Lab lab, byte[] content) throws IOException {
      check(lab, content);
      String sealed = Sealed.text(new String(content, StandardCharsets.UTF_8));
      check(lab, sealed.getBytes(StandardCharsets.UTF_8));
    }

    private void check(Lab lab, byte[] content) throws IOException {
      Path file = Files.write(lab.file("translation.json"), content);
      try {
        Translation translation = TranslationFile.read(file, "translation.json");
        Answers.checkFinite(translation);
        checkRoundTrip(file, TranslationFile.text(translation));
      } catch (UnusableInput e) {
        Answers.checkProblems(e.problems(), "translation.json", content);
      }
    }

    private void checkRoundTrip(Path file, String text) throws IOException {
      Files.writeString(file, text);
      try {
        assertEquals(text, TranslationFile.text(TranslationFile.read(file, "again")));
      } catch (UnusableInput e) {
        throw new AssertionError("what was written cannot be read", e);
      }
    }
  };

  private final String folder;

  Reader(String folder) {
    this.folder = folder;
  }

  /** Where the files lie that once were a fault, and those a search begins with. */
  String folder() {
    return folder;
  }

  /**
   * Reads a file and checks the answer.
   *
   * @param lab a folder to write into
   * @param content of the file
   * @throws IOException when the folder cannot be written to; never for what the file holds
   */
  abstract void read(Lab lab, byte[] content) throws IOException;

  private static void capture(Lab lab, byte[] content, SoundContent sound, Side side)
      throws IOException {
    Path file = Files.write(lab.file("capture"), content);
    try {
      Reading reading = CaptureFile.read(file, "capture", sound, side);
      Answers.checkFinite(reading);
      Answers.checkProblems(reading.notes(), "capture", content);
    } catch (UnusableInput e) {
      Answers.checkProblems(e.problems(), "capture", content);
    }
  }
}
