package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;

/**
 * The workbench in a real browser. Without Debian's chromium and chromium-driver it is skipped,
 * unless {@code twinrig.browser=required} says that it must run.
 */
class WorkbenchBrowserTest {
  /** Ten looks a second for twenty seconds. */
  private static final int LOOKS = 200;

  private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  private static final Path DRIVER = Path.of("/usr/bin/chromedriver");

  @TempDir static Path profiles;
  private static ChromeDriver driver;

  @TempDir Path folder;
  private Browser browser;

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
    driver.get(browser.address());
    driver.findElement(By.linkText("Captures"));
  }

  @AfterEach
  void close() {
    browser.close();
    assertEquals(List.of(), browser.faults());
  }

  private void go(String path) {
    driver.get(browser.root() + path);
  }

  private String unit() throws Exception {
    return browser
        .content("captures.csv")
        .lines()
        .skip(1)
        .findFirst()
        .orElseThrow()
        .split(",", -1)[0];
  }

  private String text() {
    return driver.findElement(By.tagName("body")).getText();
  }

  /**
   * Waits until a part of the page says something; the page may be replaced while it is read.
   *
   * @return what it says
   */
  private String shown(By part, String words) {
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

  @Test
  void aSeatingIsLeftOutAndUndone() throws Exception {
    byte[] before = Files.readAllBytes(browser.file("captures.csv"));
    go("/unit?name=" + Pages.query(unit()));
    WebElement entry = driver.findElement(By.id("entry-2"));
    entry.findElement(By.name("reason")).sendKeys("cup not seated");
    entry.findElement(By.cssSelector("button[type=submit]")).click();
    shown(By.cssSelector("#entry-2 .state"), "cup not seated");
    assertTrue(browser.content("captures.csv").contains(",cup not seated,"));
    driver.findElement(By.linkText("Study")).click();
    String change = shown(By.id("change"), "was left out");
    assertTrue(change.contains("seating 1 (M), was left out: cup not seated."), change);
    assertTrue(change.contains("The mean transfer moved most at "), change);
    driver.findElement(By.cssSelector(".undo button")).click();
    shown(By.id("change"), "Undone: ");
    assertArrayEquals(before, Files.readAllBytes(browser.file("captures.csv")));
  }

  @Test
  void theKeyboardIsEnough() throws Exception {
    byte[] before = Files.readAllBytes(browser.file("captures.csv"));
    go("/unit?name=" + Pages.query(unit()));
    String first = driver.getCurrentUrl();
    key("n");
    driver.findElement(By.cssSelector("a[rel=prev]"));
    assertNotEquals(first, driver.getCurrentUrl());
    key("p");
    assertEquals(unit(), shown(By.tagName("h1"), unit()));
    key("j");
    key("j");
    key("k");
    assertEquals("entry-2", driver.switchTo().activeElement().getDomAttribute("id"));
    key("x");
    new Actions(driver).sendKeys("no key jumps from a field", Keys.ENTER).perform();
    driver.findElement(By.cssSelector("#entry-2 [data-own-key=t]"));
    assertTrue(browser.content("captures.csv").contains(",no key jumps from a field,"));
    assertEquals("entry-2", driver.switchTo().activeElement().getDomAttribute("id"));
    key("t");
    driver.findElement(By.cssSelector("#entry-2 [data-own-key=x]"));
    assertArrayEquals(before, Files.readAllBytes(browser.file("captures.csv")));
    key("u");
    driver.findElement(By.cssSelector("#entry-2 [data-own-key=t]"));
    key("u");
    driver.findElement(By.cssSelector("#entry-2 [data-own-key=x]"));
    assertArrayEquals(before, Files.readAllBytes(browser.file("captures.csv")));
    Object listed =
        driver.executeScript(
            "return Array.from(document.querySelectorAll('.keys kbd')).map(k => k.textContent).join('')");
    Object shown =
        driver.executeScript(
            "return Array.from(document.querySelectorAll('[data-key],[data-own-key]')).map(c =>"
                + " c.dataset.key || c.dataset.ownKey).filter((k, i, all) => all.indexOf(k) === i)"
                + ".join('')");
    assertEquals("npjkxtu", listed);
    assertEquals("nkjx", shown, "first unit, nothing left out, nothing to undo");
    driver.findElement(By.id("keys-on")).click();
    key("n");
    assertEquals(unit(), shown(By.tagName("h1"), unit()));
    driver.findElement(By.id("keys-on")).click();
  }

  private static void key(String key) {
    new Actions(driver).sendKeys(key).perform();
  }

  @Test
  void aToleranceChangesTheStrip() {
    go("/settings");
    WebElement field = driver.findElement(By.id("f-tolerance.reliable_db"));
    field.clear();
    field.sendKeys("0.4", Keys.ENTER);
    List<WebElement> strips = new ArrayList<>();
    driver.findElement(By.id("change"));
    strips.addAll(driver.findElements(By.cssSelector(".compare .strip svg")));
    assertEquals(2, strips.size());
    assertNotEquals(
        strips.get(0).getDomProperty("innerHTML"), strips.get(1).getDomProperty("innerHTML"));
    assertTrue(text().contains("Octaves reliable: "));
  }

  @Test
  void threeGraphsAreDroppedOneOfThemSpoiled() throws Exception {
    List<String> files = new ArrayList<>();
    try (var graphs = Files.list(browser.file("catalogue"))) {
      graphs.sorted().limit(2).map(g -> g.toAbsolutePath().toString()).forEach(files::add);
    }
    files.add(
        Files.writeString(folder.resolve("spoiled.csv"), "not a graph\n", StandardCharsets.UTF_8)
            .toString());
    go("/catalogue");
    driver.findElement(By.id("files")).sendKeys(String.join("\n", files));
    driver.findElement(By.id("kind")).sendKeys("in-ear");
    driver.findElement(By.cssSelector(".drop button")).click();
    driver.findElement(By.id("graphs-done"));
    assertTrue(text().contains("spoiled.csv: "), text());
    assertTrue(text().contains("2 of 2 graphs shown"), text());
    assertEquals(2, driver.findElements(By.cssSelector("#graphs tbody tr")).size());
    assertEquals(2, driver.findElements(By.cssSelector("figure svg")).size());
  }

  /** Every page by the rules of axe-core (W3C WCAG 2.2 A and AA), and small screens. */
  @Test
  void everyPageIsAccessible() throws Exception {
    String axe;
    try (InputStream in = WorkbenchBrowserTest.class.getResourceAsStream("axe.min.js")) {
      axe = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
    }
    browser.finish(browser.post("/catalogue-run", java.util.Map.of()));
    browser.post(
        "/leave-out",
        java.util.Map.of("revision", "1", "line", "2", "unit", unit(), "reason", "to look at"));
    List<String> pages =
        List.of(
            "/",
            "/unit?name=" + Pages.query(unit()),
            "/study",
            "/settings",
            "/zones?hz=9000",
            "/catalogue",
            "/report",
            "/nowhere");
    for (String page : pages) {
      go(page);
      driver.executeScript(axe);
      Object found =
          driver.executeAsyncScript(
              "var done = arguments[arguments.length - 1];"
                  + "axe.run({resultTypes:['violations']}).then(function (r) {"
                  + " done(r.violations.map(function (v) { return v.impact + ' ' + v.id + ': ' +"
                  + " v.nodes[0].html; }).join('\\n')); });");
      assertEquals("", found, page);
      for (int width : List.of(360, 800, 1280)) {
        driver.manage().window().setSize(new Dimension(width, 900));
        Object wider =
            driver.executeScript(
                "return document.documentElement.scrollWidth > document.documentElement.clientWidth"
                    + " + 1");
        look(page, width);
        assertFalse((Boolean) wider, page + " is wider than " + width + " px");
      }
      assertEquals(List.of(), severe(), page);
    }
  }

  /** What the browser itself complains of, such as a breach of the content security policy. */
  private static List<String> severe() {
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
  private static void look(String page, int width) throws Exception {
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
