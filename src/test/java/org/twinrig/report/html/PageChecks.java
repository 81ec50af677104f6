package org.twinrig.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What must hold for every page. */
final class PageChecks {
  private static final Pattern TAG = Pattern.compile("<(/?)([a-zA-Z][a-zA-Z0-9]*)([^>]*?)(/?)>");
  private static final Pattern HEADING =
      Pattern.compile("<(h[1-6])(?: id=\"[a-z]+\")?>(.*?)</h[1-6]>");
  private static final Set<String> VOID = Set.of("meta", "br", "hr", "img", "input", "link");

  private PageChecks() {}

  static List<String> headings(String page) {
    List<String> headings = new ArrayList<>();
    Matcher matcher = HEADING.matcher(page);
    while (matcher.find()) {
      headings.add(matcher.group(1) + " " + matcher.group(2));
    }
    return headings;
  }

  /** The items of the first list behind a text. */
  static List<String> items(String page, String before) {
    int from = page.indexOf(before);
    assertTrue(from >= 0, before);
    Matcher list = Pattern.compile("(?s)<([uo]l)[^>]*>(.*?)</\\1>").matcher(page.substring(from));
    assertTrue(list.find(), before);
    return Pattern.compile("<li>(.*?)</li>")
        .matcher(list.group(2))
        .results()
        .map(m -> m.group(1))
        .toList();
  }

  /** The cells of a table as a reader sees them, its heads first; none without such a table. */
  static List<List<String>> table(String page, String caption) {
    int from = page.indexOf("<caption>" + caption + "</caption>");
    return from < 0
        ? List.of()
        : Pattern.compile("<tr>(.*?)</tr>")
            .matcher(page.substring(from, page.indexOf("</table>", from)))
            .results()
            .map(row -> cells(row.group(1)))
            .toList();
  }

  private static List<String> cells(String row) {
    return Pattern.compile("<(t[hd])[^>]*>(.*?)</\\1>")
        .matcher(row)
        .results()
        .map(c -> c.group(2).replaceAll("<.*?>", "").replace('\u00a0', ' ').replace("\u00ad", ""))
        .toList();
  }

  /** HTML Living Standard 13.1.2: a start tag without its end tag is an error but for void ones. */
  static void tagsClose(String page) {
    Deque<String> open = new ArrayDeque<>();
    Matcher matcher = TAG.matcher(page.replaceAll("(?s)<script>.*?</script>", ""));
    while (matcher.find()) {
      String name = matcher.group(2);
      if (!matcher.group(1).isEmpty()) {
        assertEquals(open.pop(), name, "end tag near " + near(page, matcher.start()));
      } else if (matcher.group(4).isEmpty() && !VOID.contains(name)) {
        open.push(name);
      }
    }
    assertEquals(List.of(), List.copyOf(open));
  }

  static void standsAlone(String page) {
    String own = page.replace("http://www.w3.org/2000/svg", "");
    assertFalse(Pattern.compile("https?:|\\ssrc=|@import|url\\((?!#)|<link").matcher(own).find());
  }

  static void saysNothingVoid(String page) {
    String text = page.replaceAll("(?s)<script>.*?</script>", "");
    assertFalse(Pattern.compile("\\b(NaN|null|Infinity|Optional)\\b").matcher(text).find());
  }

  static void tablesCanBeRead(String page) {
    assertEquals(count(page, "<table>"), count(page, "<caption>"));
    assertEquals(count(page, "<th "), count(page, "<th scope=\"(col|row)\""));
    assertFalse(page.contains("<th>"));
  }

  static long count(String page, String pattern) {
    return Pattern.compile(pattern).matcher(page).results().count();
  }

  private static String near(String page, int at) {
    return page.substring(Math.max(0, at - 80), Math.min(page.length(), at + 80));
  }
}
