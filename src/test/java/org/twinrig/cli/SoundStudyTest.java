package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.analysis.Analysis;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.capture.Capture;
import org.twinrig.intake.SampleFormat;
import org.twinrig.intake.WavBytes;
import org.twinrig.problem.Findings;
import org.twinrig.problem.UnusableInput;
import org.twinrig.regression.BandOutcome;
import org.twinrig.spectrum.Filter;
import org.twinrig.spectrum.Signal;
import org.twinrig.spectrum.Sweep;
import org.twinrig.study.CaptureReading;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;

/**
 * One study three times: its captures as text in closed form, as impulse responses, and as
 * recordings of a sweep with distortion. The transfers agree.
 */
class SoundStudyTest {
  private static final int RATE_HZ = 48_000;
  private static final Sweep SWEEP = new Sweep(10, 22_000, 4, 20, 5);
  private static final String SWEEP_YAML =
      "sweep: { from_hz: 10, to_hz: 22000, seconds: 4, fade_in_ms: 20, fade_out_ms: 5 }\n";

  @TempDir private Path folder;

  /** How one ear of a unit on a fixture turns into the bytes of its capture file. */
  private interface Writing {
    byte[] bytes(Filter left, Filter right);
  }

  private static Filter chain(int unit, boolean head, int ear) {
    Filter filter =
        new Filter(RATE_HZ)
            .peak(70 + 6 * unit, 0.8, 5 - unit)
            .peak(2700 + 90 * unit + 30 * ear, 2, 9)
            .peak(8200 + 150 * unit, 5, -9);
    return head ? filter.peak(150, 0.7, -2).peak(3400 + 40 * unit, 3, 4) : filter;
  }

  private static byte[] text(Filter filter) {
    StringBuilder text = new StringBuilder("frequency_hz,level_db\n");
    for (double hz = 15; hz < 22_000; hz *= Math.pow(2, 1.0 / 96)) {
      text.append(String.format(Locale.ROOT, "%.5f,%.5f%n", hz, filter.levelDb(hz)));
    }
    return text.toString().getBytes(java.nio.charset.StandardCharsets.US_ASCII);
  }

  private static byte[] impulses(Filter left, Filter right) {
    double[] click = new double[RATE_HZ / 2];
    click[960] = 0.2;
    return stereo(left.apply(click), right.apply(click));
  }

  private static byte[] recordings(Filter left, Filter right) {
    Signal signal = SWEEP.signal(RATE_HZ);
    double[] played = new double[5 * RATE_HZ];
    for (int i = 0; i < signal.size(); i++) {
      played[2400 + i] = 0.2 * signal.sample(i);
    }
    return stereo(left.apply(played), right.apply(played));
  }

  private static byte[] stereo(double[] left, double[] right) {
    double[] both = new double[2 * left.length];
    for (int i = 0; i < left.length; i++) {
      both[2 * i] = left[i];
      both[2 * i + 1] = right[i];
    }
    return WavBytes.of(SampleFormat.INTEGER_24).withChannels(2).file(both);
  }

  private Path study(String name, String more, String ending, Writing writing) throws IOException {
    Path study = Files.createDirectories(folder.resolve(name));
    List<String> units = new ArrayList<>(List.of("unit,kind"));
    List<String> captures = new ArrayList<>(List.of("unit,fixture,side,seating,file"));
    for (int unit = 1; unit <= 3; unit++) {
      units.add("Alder " + unit + ",over-ear open");
      for (String fixture : List.of("plate", "head")) {
        Filter left = chain(unit, fixture.equals("head"), 0);
        Filter right = chain(unit, fixture.equals("head"), 1);
        String file = fixture + "-" + unit;
        if (ending.equals("wav")) {
          Files.write(study.resolve(file + ".wav"), writing.bytes(left, right));
        } else {
          Files.write(study.resolve(file + "-L.csv"), text(left));
          Files.write(study.resolve(file + "-R.csv"), text(right));
        }
        for (String side : List.of("L", "R")) {
          String of = ending.equals("wav") ? file + ".wav" : file + "-" + side + ".csv";
          captures.add("Alder " + unit + "," + fixture + "," + side + ",1," + of);
        }
      }
    }
    Files.write(study.resolve("units.csv"), units);
    Files.write(study.resolve("captures.csv"), captures);
    Files.writeString(
        study.resolve("study.yaml"),
        """
        title: Plate to head
        from: plate
        to: head
        fixtures:
          plate: { label: Plate, ear_simulator: IEC 60318-4, simulates_hz: [100, 10000], usable_hz: [20, 16000] }
          head: { label: Head, ear_simulator: ITU-T P.57 type 4.3, simulates_hz: [20, 20000] }
        units: units.csv
        captures: captures.csv
        min_units: 3
        """
            + more);
    return study;
  }

  /** Mean transfer by mid-band frequency. */
  private static Map<Double, Double> transfer(Path folder) throws UnusableInput {
    Study study = StudyReader.read(folder).value();
    Findings<List<Capture>> captures = CaptureReading.read(study, 2);
    assertEquals(List.of(), captures.problems());
    StudyOutcome outcome = Analysis.of(study, captures.value(), "", 2);
    assertEquals(1, outcome.kinds().size());
    assertEquals(List.of(), outcome.screening().verdicts());
    Map<Double, Double> transfer = new LinkedHashMap<>();
    for (BandOutcome band : outcome.kinds().get(0).estimate().bands()) {
      if (band instanceof BandOutcome.Fitted fitted) {
        transfer.put(fitted.band().midHz(), fitted.mean().meanDb());
      }
    }
    return transfer;
  }

  @Test
  void soundGivesTheTransferThatTextGives() throws Exception {
    Map<Double, Double> text = transfer(study("text", "", "csv", (left, right) -> new byte[0]));
    Map<Double, Double> impulses =
        transfer(
            study("impulses", "impulse: { length_ms: 300 }\n", "wav", SoundStudyTest::impulses));
    Map<Double, Double> sweeps =
        transfer(study("sweeps", SWEEP_YAML, "wav", SoundStudyTest::recordings));
    assertEquals(120, text.size());
    assertEquals(text.keySet(), impulses.keySet());
    assertEquals(text.keySet(), sweeps.keySet());
    for (double midHz : text.keySet()) {
      assertEquals(text.get(midHz), impulses.get(midHz), 0.01, midHz + " Hz");
      assertEquals(text.get(midHz), sweeps.get(midHz), 0.05, midHz + " Hz");
    }
  }

  @Test
  void inspectReadsSoundAsTheStudyDeclaresIt() throws IOException {
    Path study = study("sweeps", SWEEP_YAML, "wav", SoundStudyTest::recordings);
    StringWriter out = new StringWriter();
    String file = study.resolve("head-1.wav").toString();
    int status =
        Main.run(
            new PrintWriter(out),
            new PrintWriter(new StringWriter()),
            "inspect",
            "--study",
            study.toString(),
            file);
    assertEquals(0, status);
    assertTrue(out.toString().contains("channel 1 of 2 (side L)"), out.toString());
    assertTrue(out.toString().contains("channel 2 of 2 (side R)"), out.toString());
    StringWriter plain = new StringWriter();
    assertEquals(
        1, Main.run(new PrintWriter(plain), new PrintWriter(new StringWriter()), "inspect", file));
    assertTrue(plain.toString().contains("declare the `sweep`"), plain.toString());
  }
}
