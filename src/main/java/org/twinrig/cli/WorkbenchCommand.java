package org.twinrig.cli;

import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import org.twinrig.problem.UnusableInput;
import org.twinrig.workbench.Workbench;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code twinrig workbench}: web pages on this machine for the daily work on a study. */
@Command(
    name = "workbench",
    description =
        "Opens a study's workbench: pages in a browser on this machine to review captures, change"
            + " settings and see what that does.")
final class WorkbenchCommand extends TwinrigCommand {
  @Parameters(
      paramLabel = "STUDY_DIR",
      description = "The folder of the study, with its study.yaml.")
  private Path study;

  private int port;

  @Option(
      names = "--bind",
      paramLabel = "ADDRESS",
      defaultValue = "127.0.0.1",
      description =
          "The address to listen on (default: ${DEFAULT-VALUE}, this machine only). With any other,"
              + " whoever has the printed link and reaches this machine can change the study; the"
              + " connection is not encrypted.")
  private String bind;

  @Mixin private DataRoots dataRoots;

  @Option(
      names = "--port",
      paramLabel = "N",
      defaultValue = "0",
      description = "The port to listen on (default: a free one).")
  void setPort(int value) {
    refuse(value < 0 || value > 65_535, "--port must be from 0 to 65535, but is " + value);
    port = value;
  }

  @Override
  public Integer call() throws UnusableInput, IOException, InterruptedException {
    Workbench.Options options =
        new Workbench.Options(
            study,
            dataRoots.folders,
            address(),
            port,
            threads(),
            Main.version(),
            this::remark,
            this::tell);
    if (!options.bind().isLoopbackAddress()) {
      err()
          .println(
              """
              --bind %s: other machines reach this workbench. Whoever has its link can read and \
              change the study. The connection is not encrypted: whoever listens on the network can \
              read the link and all that is shown. Do this only in a network you trust; without \
              --bind only this machine reaches it."""
                  .formatted(bind));
    }
    try (Workbench workbench = Workbench.open(options)) {
      out().println("Open this in a browser: " + workbench.addresses().get(0));
      workbench.addresses().stream()
          .skip(1)
          .forEach(a -> out().println("or, by another address of this machine: " + a));
      out().println("Stop it with Ctrl+C; nothing that was confirmed is lost.");
      if (out().checkError()) {
        return 1; // nobody has the link
      }
      workbench.join();
    }
    return 0;
  }

  private InetAddress address() {
    try {
      return InetAddress.getByName(bind);
    } catch (UnknownHostException e) {
      throw wrong("--bind: there is no address `" + bind + "`");
    }
  }

  private void tell(Exception fault) {
    err().println("twinrig: a fault of the program: " + fault);
    if (debug()) {
      fault.printStackTrace(err());
    }
    err().flush();
  }
}
