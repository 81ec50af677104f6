package org.twinrig.capture;

/**
 * One row of captures.csv: what was measured, and which file holds it.
 *
 * @param seating the number of the seating, from 1
 * @param file the file as the lab wrote it, relative to the table
 * @param session empty when none
 * @param exclude why the lab left the capture out; empty when it did not
 * @param confirmed what the lab answers to doubts about the capture; empty when nothing
 * @param line the line of captures.csv, from 1
 */
public record CaptureEntry(
    String unit,
    String fixture,
    Side side,
    int seating,
    String file,
    String session,
    String exclude,
    String note,
    String confirmed,
    int line) {

  public CaptureEntry {
    if (unit.isBlank() || fixture.isBlank() || file.isBlank()) {
      throw new IllegalArgumentException("a capture needs a unit, a fixture and a file");
    }
    if (seating < 1) {
      throw new IllegalArgumentException("seatings count from 1, but this is " + seating);
    }
  }

  /** The same capture left out for a reason; one that is left out already keeps its own. */
  public CaptureEntry leftOut(String reason) {
    return excludedByLab() || reason.isEmpty()
        ? this
        : new CaptureEntry(
            unit, fixture, side, seating, file, session, reason, note, confirmed, line);
  }

  /** The same capture of no session that is known. */
  public CaptureEntry withoutSession() {
    return new CaptureEntry(unit, fixture, side, seating, file, "", exclude, note, confirmed, line);
  }

  /** The same capture as another seating. */
  public CaptureEntry asSeating(int number) {
    return new CaptureEntry(
        unit, fixture, side, number, file, session, exclude, note, confirmed, line);
  }

  /** Whether the lab left the capture out. */
  public boolean excludedByLab() {
    return !exclude.isBlank();
  }
}
