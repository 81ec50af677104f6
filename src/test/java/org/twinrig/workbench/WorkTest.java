package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.concurrent.CancellationException;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.twinrig.problem.UnusableInput;

class WorkTest {

  private static void settle(Work work) throws InterruptedException {
    for (int k = 0; k < 1000 && !work.finished(); k++) {
      Thread.sleep(5);
    }
    assertTrue(work.finished());
  }

  @Test
  void oneThingIsDoneAtATimeAndCanBeStopped() throws Exception {
    CountDownLatch begun = new CountDownLatch(1);
    CountDownLatch goOn = new CountDownLatch(1);
    try (Work.Queue queue = new Work.Queue()) {
      Work work =
          queue.begin(
              "Counting",
              "/",
              w -> {
                w.expect(3);
                w.step();
                begun.countDown();
                goOn.await();
                w.step();
                w.step();
              });
      begun.await();
      assertEquals("1 of 3", work.done() + " of " + work.total());
      assertEquals(
          "the workbench: it is still busy (Counting); wait until that is done, or stop it",
          assertThrows(UnusableInput.class, () -> queue.begin("More", "/", w -> {})).getMessage());
      assertFalse(work.finished());
      work.cancel();
      goOn.countDown();
      settle(work);
      assertTrue(work.failure().orElseThrow() instanceof CancellationException);
      Work next = queue.begin("More", "/", w -> {});
      settle(next);
      assertTrue(next.failure().isEmpty());
      assertTrue(queue.of(work.id).isEmpty());
    }
  }
}
