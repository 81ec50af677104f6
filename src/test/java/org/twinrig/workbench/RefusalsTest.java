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
  private final Refusals refusals =
      new Refusals("formToken", Incoming.Limits.STANDARD, faults::add);

  private String body(Response response) {
    return new String(response.body(), StandardCharsets.UTF_8);
  }

  @Test
  void aDiskThatRefusesIsNoFaultOfTheProgram() {
    Response response = refusals.of(new AccessDeniedException("/lab/study/captures.csv"));
    assertEquals(500, response.status());
    assertTrue(body(response).contains("<li>captures.csv: AccessDenied</li>"), body(response));
    assertEquals(List.of(), faults);
  }

  @Test
  void tooLittleMemoryIsNoFaultOfTheProgram() {
    Response response = refusals.because(RefusedException.Why.MEMORY, List.of());
    assertEquals(503, response.status());
    assertTrue(
        body(response)
            .contains(
                " MB) is not enough for this just now. Try again when less is being done, or start"
                    + " the workbench with more, for example with"
                    + " TWINRIG_JAVA_OPTIONS=-Xmx2g. What was confirmed before is safe in the"
                    + " study's files."),
        body(response));
    assertEquals(List.of(), faults);
  }

  @Test
  void aFaultOfTheProgramIsHandedOnAndShowsNoTrace() {
    IllegalStateException fault = new IllegalStateException("<secret>");
    Response response = refusals.of(fault);
    assertEquals(500, response.status());
    assertTrue(body(response).contains("It is a fault of the program."), body(response));
    assertTrue(!body(response).contains("secret"), body(response));
    assertEquals(List.of(fault), faults);
  }
}
