package org.twinrig.workbench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;

/** How the pages look: on small screens, enlarged, on paper, and to those who do not see them. */
class WorkbenchLookTest extends BrowserTesting {

  /** Every page by the rules of axe-core (W3C WCAG 2.2 A and AA), and small screens. */
  @Test
  void everyPageIsAccessible() throws Exception {
    String axe;
    try (InputStream in = WorkbenchBrowserTest.class.getResourceAsStream("axe.min.js")) {
      axe = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
    }
    WorkbenchDoubtsTest.leak(browser, 3);
    WorkbenchDoubtsTest.suggest(browser);
    WorkbenchAnswersTest.sameGraph(browser);
    WorkbenchAnswersTest.changePinna(browser);
    browser.post(
        "/leave-out", Map.of("revision", "2", "line", "2", "unit", unit(), "reason", "to look at"));
    browser.post(
        "/answer", Map.of("state", "3", "cause", "1", "of-0", "on", "reason", "relabelled"));
    browser.finish(browser.post("/catalogue-run", Map.of()));
    browser.finish(browser.post("/explained", Map.of()));
    String sent =
        browser
            .upload(Map.of("g.csv", new byte[] {'1'}))
            .headers()
            .firstValue("Location")
            .orElseThrow();
    List<String> pages =
        List.of(
            sent,
            "/settings-text",
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

  private List<String> pages() throws Exception {
    return List.of(
        "/",
        "/unit?name=" + Pages.query(unit()),
        "/study",
        "/settings",
        "/settings-text",
        "/zones?hz=9000",
        "/catalogue",
        "/report");
  }

  /** W3C WCAG 2.2, 1.4.4 and 1.4.10: a window of 1280 pixels at 200 % and at 400 %. */
  @Test
  void enlargedPagesNeedNoSidewaysScrolling() throws Exception {
    browser.finish(browser.post("/catalogue-run", Map.of()));
    for (String page : pages()) {
      go(page);
      for (int zoom : List.of(2, 4)) {
        command(
            "Emulation.setDeviceMetricsOverride",
            Map.of(
                "width",
                1280 / zoom,
                "height",
                1024 / zoom,
                "deviceScaleFactor",
                zoom,
                "mobile",
                false));
        assertEquals((long) zoom, driver.executeScript("return window.devicePixelRatio"));
        assertEquals(1280L / zoom, driver.executeScript("return window.innerWidth"));
        assertEquals(
            false,
            driver.executeScript(
                "return document.documentElement.scrollWidth >"
                    + " document.documentElement.clientWidth"),
            page + " at " + zoom + "00 %");
      }
      command("Emulation.clearDeviceMetricsOverride", Map.of());
    }
  }

  /** A declared zone is one row where there is room, and its two ends never part. */
  @Test
  void theRowOfAZoneDoesNotBreak() {
    for (int width : List.of(1200, 1280)) {
      driver.manage().window().setSize(new Dimension(width, 900));
      go("/settings");
      assertEquals(
          true,
          driver.executeScript(
              "return Array.from(document.querySelectorAll('.zone')).every(function (row) {"
                  + " var tops = Array.from(row.querySelectorAll('input,select')).map("
                  + "function (e) { return e.getBoundingClientRect().top; });"
                  + " return Math.max.apply(null, tops) - Math.min.apply(null, tops) < 8; })"),
          "at " + width);
    }
  }

  @Test
  void whoWantsNoMotionGetsNone() {
    for (Map.Entry<String, String> wish :
        Map.of("reduce", "auto", "no-preference", "smooth").entrySet()) {
      command(
          "Emulation.setEmulatedMedia",
          Map.of(
              "features",
              List.of(Map.of("name", "prefers-reduced-motion", "value", wish.getKey()))));
      go("/study");
      assertEquals(
          wish.getValue(),
          driver.executeScript("return getComputedStyle(document.documentElement).scrollBehavior"));
      assertEquals(
          0L,
          driver.executeScript(
              "return Array.from(document.querySelectorAll('*')).filter(function (e) {"
                  + " var s = getComputedStyle(e); return s.transitionDuration !== '0s' ||"
                  + " s.animationName !== 'none'; }).length"),
          "nothing moves by itself");
    }
    command("Emulation.setEmulatedMedia", Map.of("features", List.of()));
  }

  /** Sheets of A4 (ISO 216: 210 mm by 297 mm), marks printed, nothing to press, nothing shut. */
  @Test
  void pagesPrint() throws Exception {
    Files.writeString(browser.file("units.csv"), browser.content("units.csv") + "Nobody 1,,,,\n");
    browser.post("/reload", Map.of());
    go("/");
    assertEquals(1, driver.findElements(By.cssSelector("details:not([open])")).size());
    command("Emulation.setEmulatedMedia", Map.of("media", "print"));
    for (String page : pages()) {
      go(page);
      assertEquals(
          0L,
          driver.executeScript(
              "return Array.from(document.querySelectorAll('nav,button,input,textarea')).filter("
                  + "function (e) { return e.type !== 'hidden' && e.offsetParent !== null; }).length"),
          page);
      assertEquals(
          true,
          driver.executeScript(
              "return Array.from(document.querySelectorAll('.strip path')).every(function (p) {"
                  + " return getComputedStyle(p).printColorAdjust === 'exact'; })"),
          page);
    }
    command("Emulation.setEmulatedMedia", Map.of("media", ""));
    go("/");
    driver.executeScript(
        "window.addEventListener('beforeprint', function () { window.shut ="
            + " document.querySelectorAll('details:not([open])').length; })");
    Object pdf = command("Page.printToPDF", Map.of("preferCSSPageSize", true)).get("data");
    String text = new String(Base64.getDecoder().decode((String) pdf), StandardCharsets.ISO_8859_1);
    Matcher box = Pattern.compile("/MediaBox \\[0 0 ([0-9.]+) ([0-9.]+)]").matcher(text);
    assertTrue(box.find());
    assertEquals(210 / 25.4 * 72, Double.parseDouble(box.group(1)), 0.5);
    assertEquals(297 / 25.4 * 72, Double.parseDouble(box.group(2)), 0.5);
    assertEquals(0L, driver.executeScript("return window.shut"), "opened for the paper");
    assertEquals(1, driver.findElements(By.cssSelector("details:not([open])")).size());
  }
}
