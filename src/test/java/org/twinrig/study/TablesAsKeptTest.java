package org.twinrig.study;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.capture.CaptureEntry;
import org.twinrig.problem.UnusableInput;

/** Tables that leave out whole units and sessions, and seatings as sessions number them. */
class TablesAsKeptTest {
  private static final String HEADER = "unit,fixture,side,seating,file,session\n";

  @TempDir Path temp;

  private static List<String> told(LabFolder lab) {
    return lab.problems().stream().filter(p -> p.contains("captures.csv")).toList();
  }

  private static List<Integer> seatings(LabFolder lab) throws UnusableInput {
    return StudyReader.read(lab.study()).value().captures().stream()
        .map(CaptureEntry::seating)
        .toList();
  }

  private static String left(LabFolder lab) throws UnusableInput {
    return StudyReader.read(lab.study()).value().captures().stream()
        .filter(CaptureEntry::excludedByLab)
        .map(c -> c.line() + " " + c.exclude())
        .collect(Collectors.joining("\n"));
  }

  @Test
  void oneReasonLeavesAUnitOut() throws IOException, UnusableInput {
    LabFolder lab = LabFolder.in(temp);
    lab.write(
        "units.csv",
        """
        unit,kind,exclude
        Alder 3,in-ear,broken hinge
        "Birch, long cable",in-ear,
        Cedar 7,in-ear,
        """);
    assertEquals(
        "2 unit left out: broken hinge\n3 unit left out: broken hinge\n6 cable touched the cheek",
        left(lab));
  }

  @Test
  void oneReasonLeavesASessionOut() throws IOException, UnusableInput {
    LabFolder lab = LabFolder.in(temp);
    lab.write(
        "sessions.csv",
        """
        session,date,fixture,calibrator_nominal_db,calibrator_read_db,exclude
        morning,2026-03-02,plate,94,94,wrong microphone
        evening,2026-03-02,head,94,94,
        """);
    assertEquals(
        "2 session left out: wrong microphone\n4 session left out: wrong microphone\n6 cable touched the cheek",
        left(lab));
  }

  /** A check unit begins at 1 in every session; two sides of one seating may be two sessions'. */
  @Test
  void seatingsAreCountedOnFromSessionToSession() throws IOException, UnusableInput {
    LabFolder lab = LabFolder.in(temp);
    lab.write(
        "captures.csv",
        HEADER
            + "Alder 3,plate,L,1,captures/a-plate.csv,morning\n"
            + "Alder 3,plate,L,2,captures/b-plate.csv,morning\n"
            + "Alder 3,plate,L,1,captures/c-plate.csv,noon\n"
            + "Alder 3,head,L,1,captures/a-head.csv,evening\n"
            + "Alder 3,head,R,1,captures/b-head.csv,night\n");
    lab.write(
        "sessions.csv",
        """
        session,date,fixture,calibrator_nominal_db,calibrator_read_db
        morning,2026-03-02,plate,94,94
        noon,2026-03-03,plate,94,94
        evening,2026-03-02,head,94,94
        night,2026-03-02,head,94,94
        """);
    assertEquals(List.of(1, 2, 3, 1, 1), seatings(lab));
    assertEquals(
        List.of(
            "NOTE captures.csv:4: seatings of `Alder 3` on `plate` begin again in session `noon`: they"
                + " are counted on, this one is 3"),
        told(lab));
  }
}
