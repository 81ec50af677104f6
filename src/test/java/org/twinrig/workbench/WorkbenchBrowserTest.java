package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;

/** The workbench in a real browser, as a person uses it. */
class WorkbenchBrowserTest extends BrowserTesting {

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
    assertEquals("npdejkxtu", listed);
    assertEquals("nkjx", shown, "first unit, nothing left out, nothing to undo");
    driver.findElement(By.id("keys-on")).click();
    key("n");
    assertEquals(unit(), shown(By.tagName("h1"), unit()));
    driver.findElement(By.id("keys-on")).click();
  }

  /** From the captures to the seatings in doubt and from one unit in doubt to the next. */
  @Test
  void theWayToADoubtIsOneKey() throws Exception {
    int last = browser.content("captures.csv").lines().toList().size();
    WorkbenchDoubtsTest.leak(browser, 3);
    WorkbenchDoubtsTest.leak(browser, last);
    WorkbenchDoubtsTest.suggest(browser);
    browser.post("/reload", Map.of());
    go("/");
    key("d");
    assertEquals(unit(), shown(By.tagName("h1"), unit()));
    assertEquals("entry-3", driver.switchTo().activeElement().getDomAttribute("id"));
    key("k");
    assertEquals("entry-2", driver.switchTo().activeElement().getDomAttribute("id"));
    driver.findElement(By.cssSelector(".doubts a[href='#entry-3']")).click();
    assertEquals("entry-3", driver.switchTo().activeElement().getDomAttribute("id"));
    assertEquals(1, driver.findElements(By.cssSelector("#entry-3.here")).size());
    String next = driver.findElement(By.cssSelector("[data-key=d]")).getText();
    key("d");
    String name = shown(By.tagName("h1"), "");
    assertTrue(next.startsWith("Next unit in doubt: "), next);
    assertNotEquals(unit(), name);
    key("e");
    assertEquals(unit(), shown(By.tagName("h1"), unit()));
    assertEquals("entry-3", driver.switchTo().activeElement().getDomAttribute("id"));
  }

  /**
   * Two doubts of one cause, of which one is answered, opened again and answered with the other.
   */
  @Test
  void aDoubtIsAnsweredAndOpenedAgain() throws Exception {
    WorkbenchAnswersTest.changePinna(browser);
    go("/");
    By form = By.cssSelector(".claims form[action='./answer']");
    WebElement first = driver.findElement(form);
    first.findElement(By.name("of-1")).click();
    first.findElement(By.name("reason")).sendKeys("the same, relabelled", Keys.ENTER);
    shown(By.cssSelector(".claims.answered summary"), "1 doubt answered");
    assertEquals(1, driver.findElements(form).size(), "the other one is open");
    driver.findElement(By.cssSelector(".claims.answered summary")).click();
    shown(By.cssSelector(".claims.answered"), "Answered: the same, relabelled");
    driver.findElement(By.cssSelector(".claims.answered button")).click();
    shown(By.cssSelector(".undo"), "Opened again: specimen changed (plate-late).");
    WebElement again = driver.findElement(form);
    assertEquals(2, again.findElements(By.cssSelector("input[type=checkbox]:checked")).size());
    again.findElement(By.name("reason")).sendKeys("relabelled, both", Keys.ENTER);
    shown(By.cssSelector(".claims.answered summary"), "1 doubt answered");
    assertEquals(0, driver.findElements(form).size());
    assertEquals(
        2,
        browser
            .content("sessions.csv")
            .lines()
            .filter(l -> l.endsWith(",\"specimen changed: relabelled, both\""))
            .count());
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

  /** Files that a page itself makes stand in for those of a file manager. */
  private static final String DROP =
      "var data = new DataTransfer();"
          + "arguments[0].forEach(function (f) { data.items.add(new File([f[1]], f[0])); });"
          + "var place = document.querySelector('.drop');"
          + "['dragenter', 'dragover', 'drop'].forEach(function (name) { place.dispatchEvent("
          + "new DragEvent(name, {dataTransfer: data, bubbles: true, cancelable: true})); });";

  private List<String> graph(String name, int place) throws Exception {
    try (var graphs = Files.list(browser.file("catalogue"))) {
      return List.of(name, Files.readString(graphs.sorted().toList().get(place)));
    }
  }

  @Test
  void threeGraphsAreDroppedOneOfThemSpoiled() throws Exception {
    go("/catalogue");
    List<String> spoiled = List.of("spoiled.csv", "<script>alert(1)</script>\nno graph\n");
    driver.executeScript(
        DROP, List.of(graph("one.csv", 0), graph("two \"<b>\", \u00fc.csv", 1), spoiled));
    assertEquals(3L, driver.executeScript("return document.getElementById('files').files.length"));
    driver.findElement(By.cssSelector(".drop button")).click();
    driver.findElement(By.name("all-kind")).sendKeys("in-ear");
    driver.findElement(By.name("all-seatings")).sendKeys("many");
    driver.findElement(By.cssSelector("main form button[type=submit]")).click();
    shown(
        By.cssSelector("[role=alert]"),
        "all files: `seatings` is `many`; write a whole number from 1 to 10000");
    WebElement seatings = driver.findElement(By.name("all-seatings"));
    seatings.clear();
    seatings.sendKeys("3");
    driver.findElement(By.cssSelector("main form button[type=submit]")).click();
    driver.findElement(By.id("graphs-done"));
    assertTrue(text().contains("spoiled.csv: there is no line of numbers;"), text());
    assertTrue(text().contains("2 of 2 graphs shown"), text());
    assertTrue(text().contains("two \"<b>\", \u00fc.csv"), text());
    assertEquals(2, driver.findElements(By.cssSelector("#graphs tbody tr")).size());
    assertEquals(2, driver.findElements(By.cssSelector("figure svg")).size());
  }

  @Test
  void whatIsWrittenIsShown() {
    go("/report");
    driver.findElement(By.cssSelector("form[action='./report'] button")).click();
    driver.findElement(By.linkText("Open the report")).click();
    shown(By.tagName("h1"), "Plate to head");
    // Its one script runs, and nothing that it holds can reach the workbench.
    assertTrue(driver.findElements(By.cssSelector("th button")).size() > 1);
    assertEquals(
        "SecurityError",
        driver.executeScript("try { return document.cookie; } catch (e) { return e.name; }"));
    go("/report");
    driver.findElement(By.cssSelector("form[action='./explained'] button")).click();
    driver.findElement(By.linkText("Open the page for readers")).click();
    shown(By.tagName("h1"), "Why new headphone graphs differ from old ones");
    assertEquals(List.of(), severe());
  }

  /** Cookies know no ports: a browser that is inside visits what another user serves. */
  @Test
  void anotherPortGetsNothing() throws Exception {
    byte[] before = Files.readAllBytes(browser.file("captures.csv"));
    try (OtherPort other = new OtherPort()) {
      other.show(
          "<title>another port</title><img src='/unit?name=x'><img src='"
              + browser.origin()
              + "/icon.svg'><form method='post' action='/leave-out'><button>Send</button></form>"
              + "<iframe src='/study'></iframe><p>served</p>");
      // The way a link on a page of the workbench would lead, and a page opened by it.
      driver.executeScript("window.open(arguments[0] + '/opened')", other.root());
      driver.executeScript("window.location = arguments[0] + '/enter'", other.root());
      assertEquals("served", shown(By.tagName("p"), "served"));
      driver.findElement(By.tagName("button")).click();
      shown(By.tagName("p"), "served");
      String asks =
          "return fetch('/work-state?id=1', {credentials: 'include'}).then(r => r.status)";
      assertEquals(200L, driver.executeScript(asks));
      // It may request the workbench itself, and is told nothing.
      assertEquals(
          "refused",
          driver.executeScript(
              "return fetch(arguments[0] + '/', {credentials: 'include'})"
                  + ".then(r => r.text(), e => 'refused')",
              browser.origin()));
      for (String line :
          List.of("GET /enter", "GET /unit?name=x", "POST /leave-out", "GET /work-state?id=1")) {
        assertTrue(other.wasAsked(line), line);
      }
      for (int look = 0; look < LOOKS && !other.wasAsked("GET /opened"); look++) {
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(100));
      }
      assertTrue(other.wasAsked("GET /opened"));
      other.refuted(browser);
    }
    assertArrayEquals(before, Files.readAllBytes(browser.file("captures.csv")));
    String own = driver.getWindowHandle();
    for (String window : driver.getWindowHandles()) {
      if (!window.equals(own)) {
        driver.switchTo().window(window).close();
      }
    }
    driver.switchTo().window(own);
    go("/");
    assertEquals("Captures", shown(By.tagName("h1"), "Captures")); // and is still inside
  }

  @Test
  void aLineOfTheTextIsFound() {
    go("/settings-text");
    driver.executeScript(
        "var t = document.getElementById('text');"
            + "t.value = t.value.replace('model: offset', 'model: guess')");
    driver.findElement(By.cssSelector("main form button[type=submit]")).click();
    shown(By.cssSelector("[role=alert]"), "`model` is `guess`; write one of ");
    driver.findElement(By.cssSelector("[data-line]")).click();
    assertEquals(
        "model: guess",
        driver.executeScript(
            "var t = document.getElementById('text');"
                + "return t.value.substring(t.selectionStart, t.selectionEnd)"));
  }
}
