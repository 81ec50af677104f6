package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.List;
import org.junit.jupiter.api.Test;

class WorkbenchCommandTest {
  private final StringWriter err = new StringWriter();

  private int run(String... arguments) {
    return Main.run(new PrintWriter(new StringWriter()), new PrintWriter(err, true), arguments);
  }

  @Test
  void aPortMustBeOne() {
    assertEquals(2, run("workbench", "study", "--port", "65536"));
    assertTrue(
        err.toString().startsWith("--port must be from 0 to 65535, but is 65536\n"), err::toString);
  }

  @Test
  void aStudyMustBeThere() {
    assertEquals(1, run("workbench", "no-such-study"));
    assertEquals(
        "no-such-study: there is no such folder or file; name the folder of a study, or its yaml"
            + " file\n",
        err.toString());
  }

  /** The study is not there, so nothing is served: the warning comes before all work. */
  @Test
  void whoeverListensBeyondThisMachineIsWarned() {
    for (String bind : List.of("0.0.0.0", "::", "192.0.2.1")) {
      err.getBuffer().setLength(0);
      assertEquals(1, run("workbench", "no-such-study", "--bind", bind));
      assertEquals(
          "--bind "
              + bind
              + ": other machines reach this workbench. Whoever has its link can read and change"
              + " the study. The connection is not encrypted: whoever listens on the network can"
              + " read the link and all that is shown. Do this only in a network you trust; without"
              + " --bind only this machine reaches it.",
          err.toString().lines().findFirst().orElseThrow());
    }
    for (String bind : List.of("127.0.0.1", "127.0.0.7", "::1", "localhost")) {
      err.getBuffer().setLength(0);
      run("workbench", "no-such-study", "--bind", bind);
      assertFalse(err.toString().contains("other machines"), err::toString);
    }
  }

  @Test
  void aPortThatIsTakenIsNamed() throws Exception {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      int port = taken.getLocalPort();
      assertEquals(1, run("workbench", "demo-data/plate-to-head", "--port", "" + port));
      assertEquals(
          "--port: nothing can listen on 127.0.0.1, port "
              + port
              + "; name another port, or leave it out for a free one, and an address of this"
              + " machine\n",
          err.toString().lines().filter(l -> l.startsWith("--port")).findFirst().orElse("") + "\n");
    }
  }
}
