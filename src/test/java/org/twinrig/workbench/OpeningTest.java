package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.problem.UnusableInput;

/** In which order a workbench is opened, and what it says meanwhile. */
class OpeningTest {
  @TempDir Path folder;
  private final List<String> said = new ArrayList<>();

  private Workbench.Options on(Path study, int port) {
    return new Workbench.Options(
        study, List.of(), InetAddress.getLoopbackAddress(), port, 1, "test", said::add, e -> {});
  }

  private static String problem(Workbench.Options options) {
    return assertThrows(UnusableInput.class, () -> Workbench.open(options))
        .problems()
        .get(0)
        .text();
  }

  /** Were the study looked at first, its own error would come, not that of the port. */
  @Test
  void aTakenPortIsToldBeforeTheStudyIsLookedAt() throws Exception {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      int port = taken.getLocalPort();
      String told = problem(on(folder.resolve("nowhere"), port));
      assertTrue(told.startsWith("--port: nothing can listen on 127.0.0.1, port " + port), told);
    }
    assertEquals(List.of(), said);
  }

  /** Each address that is printed opens the workbench, as another machine would request for it. */
  @Test
  void whoListensEverywhereNamesAddressesThatAreReached() throws Exception {
    Path study = folder.resolve("study");
    Browser.write(study);
    for (String bind : List.of("0.0.0.0", "::")) {
      Workbench.Options options =
          new Workbench.Options(
              study, List.of(), InetAddress.getByName(bind), 0, 1, "test", said::add, e -> {});
      try (Workbench workbench = Workbench.open(options)) {
        assertFalse(workbench.addresses().isEmpty());
        for (String address : workbench.addresses()) {
          assertTrue(address.matches("http://([0-9.]+|\\[[0-9a-f:]+]):[0-9]+/.*"), address);
          assertFalse(InetAddress.getByName(URI.create(address).getHost()).isAnyLocalAddress());
          HttpResponse<String> entered =
              HttpClient.newHttpClient()
                  .send(
                      HttpRequest.newBuilder(URI.create(address)).build(),
                      HttpResponse.BodyHandlers.ofString());
          assertEquals(200, entered.statusCode(), address);
        }
      }
    }
    InetAddress six = InetAddress.getByName("2001:db8::7");
    assertEquals(List.of(six), Workbench.reached(six));
    assertEquals("[2001:db8:0:0:0:0:0:7]", Access.literal(six));
  }

  /** A machine with a network is not told to others by a name that means themselves. */
  @Test
  void anAddressOfThisMachineAloneIsNamedOnlyWhereThereIsNoOther() throws Exception {
    boolean other =
        NetworkInterface.networkInterfaces()
            .flatMap(NetworkInterface::inetAddresses)
            .anyMatch(a -> !a.isLoopbackAddress() && !a.isLinkLocalAddress());
    List<InetAddress> reached = Workbench.reached(InetAddress.getByName("0.0.0.0"));
    assertEquals(other, reached.stream().noneMatch(InetAddress::isLoopbackAddress));
  }

  @Test
  void aStudyThatIsRefusedSetsThePortFree() throws Exception {
    int port;
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      port = free.getLocalPort();
    }
    String told = problem(on(folder.resolve("nowhere"), port));
    assertTrue(told.contains("there is no such folder or file"), told);
    try (ServerSocket again = new ServerSocket(port, 1, InetAddress.getLoopbackAddress())) {
      assertEquals(port, again.getLocalPort());
    }
    assertEquals(List.of(), said, "nothing was begun");
  }

  @Test
  void whatIsDoneIsSaidWithHowMuchThereIs() throws Exception {
    Path study = folder.resolve("study");
    Browser.write(study);
    long captures = Files.readString(study.resolve("captures.csv")).lines().count() - 1;
    try (Workbench workbench = Workbench.open(on(study, 0))) {
      assertTrue(
          workbench.addresses().get(0).startsWith("http://127.0.0.1:"),
          workbench.addresses()::toString);
    }
    assertEquals(
        List.of(
            "Reading "
                + captures
                + " captures of 6 units and estimating the study; the address to open follows."),
        said);
  }

  /** What is confirmed at the start holds for every change, and no change goes beyond it. */
  @Test
  void aWideDataRootIsConfirmedAtTheStart() throws Exception {
    Path study = Files.createDirectories(folder.resolve("a/b")).resolve("study");
    Browser.write(study);
    Path yaml = study.resolve("study.yaml");
    Files.writeString(yaml, Files.readString(yaml) + "data_root: ../../..\n");
    String told = problem(on(study, 0));
    assertTrue(told.contains("confirm the folder with --data-root"), told);
    StudySession session = new StudySession(study, List.of(folder), 1, read -> {});
    session.settle(1, session.yaml().with("seed", "7"), "another seed");
    assertEquals(7, session.snapshot().study().settings().seed());
    UnusableInput refused =
        assertThrows(
            UnusableInput.class,
            () -> session.settle(2, session.yaml().with("data_root", "../../../.."), "wider"));
    assertTrue(refused.getMessage().contains("is not confirmed"), refused.getMessage());
  }
}
