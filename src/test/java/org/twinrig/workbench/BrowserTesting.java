package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/**
 * A real browser on a workbench of its own. Without Debian's chromium and chromium-driver these
 * tests are skipped, unless {@code twinrig.browser=required} says that they must run.
 */
abstract class BrowserTesting {
  /** Ten looks a second for twenty seconds. */
  static final int LOOKS = 200;

  static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  static final Path DRIVER = Path.of("/usr/bin/chromedriver");

  @TempDir static Path profiles;
  static ChromeDriver driver;

  @TempDir Path folder;
  Browser browser;

  @BeforeAll
  static void start() {
    boolean there = Files.isExecutable(CHROMIUM) && Files.isExecutable(DRIVER);
    if ("required".equals(System.getProperty("twinrig.browser"))) {
      assertTrue(there, "install the packages chromium and chromium-driver");
    }
    assumeTrue(
        there,
        "skipped: the packages chromium and chromium-driver are not installed on this machine");
    ChromeOptions options = new ChromeOptions();
    options.setBinary(CHROMIUM.toString());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--disable-background-networking",
        "--force-prefers-reduced-motion",
        "--user-data-dir=" + profiles);
    ChromeDriverService service =
        new ChromeDriverService.Builder().usingDriverExecutable(DRIVER.toFile()).build();
    driver = new ChromeDriver(service, options);
    driver.manage().timeouts().implicitlyWait(Duration.ofSeconds(5));
  }

  @AfterAll
  static void stop() {
    if (driver != null) {
      driver.quit();
    }
  }

  @BeforeEach
  void open() throws Exception {
    Browser.write(folder.resolve("study"));
    browser = Browser.on(folder.resolve("study"));
    driver.manage().window().setSize(new Dimension(1280, 900));
    severe(); // what it complained of before is not this test's
    driver.get(browser.address());
    driver.findElement(By.linkText("Captures"));
  }

  @AfterEach
  void close() {
    browser.close();
    assertEquals(List.of(), browser.faults());
  }

  void go(String path) {
    driver.get(browser.root() + path.replaceFirst("^[.]/", "/"));
  }

  String unit() throws Exception {
    return browser
        .content("captures.csv")
        .lines()
        .skip(1)
        .findFirst()
        .orElseThrow()
        .split(",", -1)[0];
  }

  String text() {
    return driver.findElement(By.tagName("body")).getText();
  }

  /**
   * Waits until a part of the page says something; the page may be replaced while it is read.
   *
   * @return what it says
   */
  String shown(By part, String words) {
    String text = "";
    for (int look = 0; look < LOOKS; look++) {
      try {
        text = driver.findElement(part).getText();
      } catch (StaleElementReferenceException e) {
        continue; // the page went while it was read: look at the new one
      }
      if (text.contains(words)) {
        return text;
      }
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(100));
    }
    throw new AssertionError(part + " says `" + text + "`, not `" + words + "`");
  }

  /** A command of the browser's own protocol. */
  static Map<String, Object> command(String name, Map<String, Object> parameters) {
    return driver.executeCdpCommand(name, parameters);
  }

  /** What the browser itself complains of, such as a breach of the content security policy. */
  static List<String> severe() {
    List<String> severe = new ArrayList<>();
    driver
        .manage()
        .logs()
        .get("browser")
        .forEach(
            e -> {
              if (!e.getMessage().contains("404")) {
                severe.add(e.getMessage());
              }
            });
    return severe;
  }

  /** With {@code twinrig.pictures} naming a folder, every page is kept as a picture to look at. */
  static void look(String page, int width) throws Exception {
    String place = System.getProperty("twinrig.pictures", "");
    if (!place.isEmpty()) {
      Long height = (Long) driver.executeScript("return document.documentElement.scrollHeight");
      driver.manage().window().setSize(new Dimension(width, (int) Math.min(4000, height + 150)));
      byte[] picture = driver.getScreenshotAs(OutputType.BYTES);
      String name = page.replaceAll("[^a-z]+", "-") + width + ".png";
      Files.write(Files.createDirectories(Path.of(place)).resolve(name), picture);
    }
  }
}
