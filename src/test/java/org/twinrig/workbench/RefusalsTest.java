package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RefusalsTest {
  private final List<Exception> faults = new ArrayList<>();
  private final Refusals refusals = new Refusals(new Pages("sign"), faults::add);

  private String body(Answer answer) {
    return new String(answer.body(), StandardCharsets.UTF_8);
  }

  @Test
  void aDiskThatRefusesIsNoFaultOfTheProgram() {
    Answer answer = refusals.of(new AccessDeniedException("/lab/study/captures.csv"));
    assertEquals(500, answer.status());
    assertTrue(body(answer).contains("<li>captures.csv: AccessDenied</li>"), body(answer));
    assertEquals(List.of(), faults);
  }

  @Test
  void tooLittleMemoryIsNoFaultOfTheProgram() {
    Answer answer = refusals.noMemory();
    assertEquals(503, answer.status());
    assertTrue(
        body(answer)
            .contains(
                " MB) is not enough for this just now. Try again when less is being done, or start"
                    + " the workbench with more, for example with"
                    + " TWINRIG_JAVA_OPTIONS=-Xmx2g. What was confirmed before is safe in the"
                    + " study's files."),
        body(answer));
    assertEquals(List.of(), faults);
  }

  @Test
  void aFaultOfTheProgramIsHandedOnAndShowsNoTrace() {
    IllegalStateException fault = new IllegalStateException("<secret>");
    Answer answer = refusals.of(fault);
    assertEquals(500, answer.status());
    assertTrue(body(answer).contains("It is a fault of the program."), body(answer));
    assertTrue(!body(answer).contains("secret"), body(answer));
    assertEquals(List.of(fault), faults);
  }
}
