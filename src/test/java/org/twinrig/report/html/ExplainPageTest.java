package org.twinrig.report.html;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.twinrig.analysis.KindOutcome;
import org.twinrig.analysis.StudyOutcome;
import org.twinrig.doubt.Doubt;
import org.twinrig.reliability.Reason;
import org.twinrig.report.ExampleChoice;
import org.twinrig.response.Anchor;
import org.twinrig.study.Setting;
import org.twinrig.study.Settings;
import org.twinrig.translation.TranslatedGraph;

class ExplainPageTest {
  private static final List<String> DEMO_KINDS =
      List.of("open over-ear", "closed over-ear", "in-ear", "on-ear");

  private static DemoStudy demo;
  private static Optional<TranslatedGraph> example;
  private static String page;

  @BeforeAll
  static void readTheDemonstration() {
    demo = DemoStudy.read();
    example = new ExampleChoice(demo.outcome(), 2).example().value().graph();
    page = ExplainPage.html(demo.outcome(), example, 0);
  }

  private static String html(KindOutcome... kinds) {
    return ExplainPage.html(
        HandMade.outcome(demo.outcome(), demo.outcome().study().settings(), List.of(kinds)),
        Optional.empty(),
        0);
  }

  /** Every kind of the demonstration with the same marks. */
  private static String alike(String marks) {
    return html(
        DEMO_KINDS.stream().map(k -> HandMade.kind(k, 8, marks)).toArray(KindOutcome[]::new));
  }

  private static void isSound(String html) {
    assertTrue(html.startsWith(ExplainPage.FIRST_LINE + "\n"), () -> html.substring(0, 80));
    PageChecks.tagsClose(html);
    PageChecks.standsAlone(html);
    PageChecks.saysNothingVoid(html);
    assertFalse(html.contains("<script"), "nothing to run");
    double ease = ReadingEase.of(ReadingEase.prose(html));
    assertTrue(ease >= 60, () -> "reading ease is " + ease);
  }

  private static List<String> advice(String html) {
    Matcher matcher = Pattern.compile("<li><strong>(.*?)</strong> (.*?)</li>").matcher(html);
    return matcher.results().map(m -> m.group(1) + " " + m.group(2)).toList();
  }

  private static String inShort(String html) {
    Matcher matcher = Pattern.compile("<strong>In short.</strong> (.*?)</p>").matcher(html);
    assertTrue(matcher.find());
    return matcher.group(1);
  }

  private static String table(String html) {
    Matcher matcher =
        Pattern.compile("href=\"data:text/csv;charset=utf-8,([^\"]*)\"").matcher(html);
    assertTrue(matcher.find());
    return URLDecoder.decode(matcher.group(1), StandardCharsets.UTF_8);
  }

  @Test
  void thePageIsSoundAndEasyToRead() {
    isSound(page);
    assertEquals(
        List.of(
            "h1 Why new headphone graphs differ from old ones",
            "h2 How to read the strip",
            "h2 Old and new graphs cannot be compared in the hatched zones, mostly in the treble;"
                + " besides, 1 kind of 4 cannot be compared at all",
            "h3 Open over-ear",
            "h3 Closed over-ear",
            "h3 In-ear",
            "h3 On-ear",
            "h2 Why a zone is hatched or has half a bar",
            "h2 On average, the fixtures differ by up to 8.6 dB, near 8.7 kHz",
            "h3 Open over-ear",
            "h3 Closed over-ear",
            "h3 In-ear",
            "h2 An old graph, re-expressed: best from 210 Hz to 1.7 kHz (middle)",
            "h2 Why you may hear something else",
            "h2 Take care of your hearing"),
        PageChecks.headings(page));
    assertEquals(3, PageChecks.count(page, "<section class=\"fig\">"));
  }

  @Test
  void theProseIsEasyAndItsSentencesAreShort() {
    List<String> prose = ReadingEase.prose(page);
    double ease = ReadingEase.of(prose);
    assertTrue(ease >= 75, () -> "reading ease is " + ease);
    for (String sentence : ReadingEase.sentences(prose)) {
      int words = ReadingEase.words(sentence).size();
      assertTrue(words <= 20 || sentence.startsWith("Take care from"), sentence);
    }
  }

  @Test
  void wordsOfTheTradeStayOut() {
    String text = page.replaceAll("(?s)<style>.*?</style>", "").replaceAll("<[^>]*>", " ");
    Matcher found =
        Pattern.compile(
                "(?i)\\b(confidence|simultaneous|ridge|reml|rms|interval|predict\\w*|octaves?"
                    + "|variance|transfer|deviation|resonan\\w*|seatings?|bands of|half-width)\\b")
            .matcher(text);
    assertFalse(found.find(), () -> found.group());
  }

  @Test
  void whatToDoIsSaidInShort() {
    assertEquals(
        "Put a new graph beside a re-expressed old one, never beside the old one itself. Compare"
            + " them where the bar is full. Take care where the bar is half. Do not compare them at"
            + " all where you see hatching.",
        inShort(page));
  }

  @Test
  void eachKindIsTold() {
    assertEquals(
        List.of(
            "Do not compare above 6.3 kHz (treble).",
            "Take care from 150 to 210 Hz (bass), from 1.7 to 2.4 kHz (middle) and from 3.2 to 6.3 kHz (middle and treble).",
            "Compare below 150 Hz (bass), from 210 Hz to 1.7 kHz (middle) and from 2.4 to 3.2 kHz (middle).",
            "Do not compare below 40 Hz (bass) and above 7.5 kHz (treble).",
            "Take care from 40 to 84 Hz (bass), from 1.7 to 2.7 kHz (middle) and from 4 to 7.5 kHz"
                + " (treble).",
            "Compare from 84 Hz to 1.7 kHz (bass and middle) and from 2.7 to 4 kHz (middle).",
            "Do not compare below 33 Hz (bass) and above 11 kHz (treble).",
            "Take care from 33 to 67 Hz (bass) and from 4.2 to 11 kHz (treble).",
            "Compare from 67 Hz to 4.2 kHz (bass and middle).",
            "Do not compare old with new: only 3 of this kind were measured on both fixtures. That"
                + " is too few; it takes 5."),
        advice(page));
    assertTrue(page.contains("Not drawn, because too few headphones were measured: on-ear."));
    assertTrue(
        page.contains(
            "At each tone, a new measurement of this headphone should fall inside the band 95 times"
                + " in 100."));
  }

  @Test
  void theTableHoldsEveryZone() {
    List<String> lines = table(page).lines().toList();
    int zones = demo.outcome().kinds().stream().mapToInt(k -> k.zones().size()).sum();
    assertEquals(zones + 1, lines.size());
    assertEquals("kind,from_hz,to_hz,mark,what_to_do,reason", lines.get(0));
    assertTrue(
        lines
            .get(1)
            .endsWith(
                ",reliable,compare,the old graph tells closely enough what the new one shows; parts of"
                    + " this zone lie where a fixture is not made to be like a human ear"),
        lines.get(1));
    assertTrue(
        lines.stream()
            .anyMatch(l -> l.contains("the lab knows this zone to be doubtful (canal entrance")));
  }

  /** Outside the range in which a fixture is like an ear graphs can be compared all the same. */
  @Test
  void likenessToAnEarIsToldApartFromReasons() {
    assertTrue(
        page.contains(
            "<p>From 100 Hz to 10 kHz the fixtures are made to be like a human ear. Lower and higher"
                + " they need not be. Old and new can still be compared there, as the bars say. But"
                + " the graphs tell less of what you hear.</p>"));
    String why = page.substring(page.indexOf("<section class=\"why\">"));
    assertFalse(why.substring(0, why.indexOf("</section>")).contains("human ear"));
    assertFalse(ExplainPage.reasons(demo.outcome()).contains(Reason.NOT_EAR_LIKE));
  }

  @Test
  void whatAFullBarPromisesAndCautionsAreSaid() {
    assertTrue(
        page.contains(
            "Compare the re-expressed graph with new ones. Line both up first. Then a new graph of"
                + " this headphone should lie within 1.5 dB of it, 95 times in 100."));
    assertTrue(page.contains("Compare two old graphs with each other as they were."));
    assertTrue(page.contains("Near 1 kHz, 10 dB more sounds about twice as loud."));
    assertTrue(
        page.contains(
            "<li>Never play a test sound, such as a sweep, while anyone wears the headphone. A"
                + " calibrator gives 94 or 114 dB and is for the microphone alone.</li>"));
  }

  @Test
  void theSameStudyGivesTheSamePage() {
    assertEquals(
        page,
        ExplainPage.html(
            demo.outcome(), new ExampleChoice(demo.outcome(), 1).example().value().graph(), 0));
  }

  @Test
  void nothingUnreliable() {
    String told = alike("RRRRRRRRRR");
    isSound(told);
    assertTrue(
        told.contains("<h2>Old and new graphs can be compared wherever they were measured</h2>"));
    assertEquals(
        "Put a new graph beside a re-expressed old one, never beside the old one itself. Compare"
            + " them where the bar is full.",
        inShort(told));
    assertEquals(List.of("Compare everywhere."), advice(told).stream().distinct().toList());
    assertFalse(told.contains("Why a zone is hatched"));
    String care = alike("RRRRCCRRRR");
    isSound(care);
    assertTrue(care.contains("<h2>Old and new graphs can be compared, in places with care</h2>"));
  }

  @Test
  void everythingUnreliable() {
    String told = alike("UUUUUUUUUU");
    isSound(told);
    assertTrue(told.contains("<h2>Old and new graphs cannot be compared anywhere yet</h2>"));
    assertEquals(
        "Do not compare old graphs with new ones. For now, that cannot be done anywhere.",
        inShort(told));
    assertEquals(List.of("Do not compare anywhere."), advice(told).stream().distinct().toList());
    assertTrue(told.contains("<h2>No old graph can be shown re-expressed yet</h2>"));
    assertTrue(told.contains("<h2>How far the fixtures differ is not known yet</h2>"));
  }

  @Test
  void gapsAreSaid() {
    String told = alike("--RRRRRR--");
    isSound(told);
    assertEquals(
        List.of(
            "Compare from 89 Hz to 5.6 kHz (bass and middle).",
            "Not measured below 89 Hz (bass) and above 5.6 kHz (treble)."),
        advice(told).subList(0, 2));
    assertEquals(
        List.of("Not measured anywhere."),
        advice(alike("----------")).stream().distinct().toList());
  }

  @Test
  void hatchingIsPlacedInItsRegions() {
    assertTrue(
        alike("UURRRRRRRR").contains("cannot be compared in the hatched zones, in the bass</h2>"));
    assertTrue(
        alike("URRRRRRRRU")
            .contains("cannot be compared in the hatched zones, in the bass and treble</h2>"));
  }

  @Test
  void aKindNobodyMeasuredOnBothFixturesIsSaid() {
    String told = html(HandMade.kind("open over-ear", 1, "UUUUUUUUUU"));
    isSound(told);
    assertTrue(told.contains("<p>We measured 1 headphone of 1 kind on both fixtures."));
    assertEquals(
        "Do not compare old with new: only 1 of this kind was measured on both fixtures. That is too"
            + " few; it takes 5.",
        advice(told).get(0));
    assertEquals(
        "Do not compare old with new: none of this kind was measured on both fixtures.",
        advice(told).get(1));
  }

  @Test
  void twelveKindsWithLongNamesAreAllThere() {
    String longest = "circumaural-semi-open-with-fabric-pads-xl";
    String told =
        html(
            IntStream.range(0, 12)
                .mapToObj(k -> HandMade.kind(longest + k, 6, "UCRRRRRRCU"))
                .toArray(KindOutcome[]::new));
    isSound(told);
    assertEquals(
        12, PageChecks.count(told, "<h3>Circumaural-semi-open-with-fabric-pads-xl\\d+</h3>"));
  }

  @Test
  void namesFromTheLabAreShownAsText() {
    String hostile = "<script>alert(1)</script>\"&";
    String told =
        html(HandMade.kind(hostile, 6, "UCRRRRRRCU"), HandMade.kind("=1+1", 6, "RRRRRRRRRR"));
    isSound(told);
    assertTrue(told.contains("<h3>&lt;script&gt;alert(1)&lt;/script&gt;\"&amp;</h3>"));
    assertTrue(table(told).contains("\n'=1+1,22,22387,reliable,"), () -> table(told));
  }

  @Test
  void aConfidenceIsNeverRoundedUpToAlways() {
    assertEquals("95", ExplainPage.hundredths(0.95));
    assertEquals("99.99", ExplainPage.hundredths(0.9999));
  }

  @Test
  void whereGraphsAreLinedUpIsSaid() {
    Settings settings = demo.outcome().study().settings();
    for (Map.Entry<Anchor, String> told :
        Map.<Anchor, String>of(
                new Anchor.Frequency(1000),
                "Graphs are first lined up with each other at 1 kHz. ",
                new Anchor.Range(300, 1000),
                "Graphs are first lined up with each other from 300 Hz to 1 kHz. ",
                new Anchor.None(),
                "Graphs are not lined up first. ")
            .entrySet()) {
      StudyOutcome moved =
          HandMade.outcome(
              demo.outcome(), settings.with(Setting.ANCHOR, told.getKey()), demo.outcome().kinds());
      String html = ExplainPage.html(moved, example, 0);
      assertTrue(html.contains(told.getValue()), told.getValue());
      boolean none = told.getKey() instanceof Anchor.None;
      assertEquals(
          none ? 0 : 1, PageChecks.count(html, "Line both up first. Then a new graph"), "" + none);
    }
  }

  private static StudyOutcome withoutCatalogue(List<Doubt> doubts) {
    StudyOutcome whole = demo.outcome();
    return new StudyOutcome(
        new org.twinrig.study.Study(
            whole.study().folder(),
            whole.study().title(),
            whole.study().from(),
            whole.study().to(),
            whole.study().units(),
            whole.study().captures(),
            whole.study().sessions(),
            Optional.empty(),
            whole.study().settings(),
            whole.study().capturesFolder(),
            whole.study().inputs(),
            Map.of()),
        whole.fingerprint(),
        whole.captures(),
        whole.screening(),
        whole.kinds(),
        whole.sessions(),
        whole.problems(),
        () -> doubts);
  }

  @Test
  void withoutACatalogueAHeadphoneOfTheStudyIsShown() {
    StudyOutcome without = withoutCatalogue(List.of());
    TranslatedGraph shown = new ExampleChoice(without, 2).example().value().graph().orElseThrow();
    assertTrue(
        Stream.of(0, 1, 2)
            .anyMatch(
                k -> without.kinds().get(k).paired().units().get(0).equals(shown.entry().unit())));
    String html = ExplainPage.html(without, Optional.of(shown), 0);
    isSound(html);
    assertEquals(0, PageChecks.count(html, "We are still checking"));
    assertEquals(0, PageChecks.count(html, "We hold back"));
  }

  private static Doubt doubted(String unit) {
    return Doubt.open(
        Doubt.Subject.UNIT,
        unit,
        "",
        "departs from its kind",
        new Doubt.Found("5 dB", "3 dB"),
        "It may have other pads.",
        "Measure it again.");
  }

  /** What the lab doubts and has not answered is no example, and readers are told so. */
  @Test
  void whatIsDoubtedIsNotShownAndReadersAreTold() {
    List<Doubt> firsts =
        demo.outcome().kinds().stream().map(k -> doubted(k.paired().units().get(0))).toList();
    StudyOutcome open = withoutCatalogue(firsts);
    TranslatedGraph shown = new ExampleChoice(open, 2).example().value().graph().orElseThrow();
    assertTrue(firsts.stream().noneMatch(d -> d.isAbout(shown.entry().unit())));
    String html = ExplainPage.html(open, Optional.of(shown), 3);
    isSound(html);
    assertEquals(
        1,
        PageChecks.count(
            html, "<p>We are still checking some of the measurements behind this page.</p>"));
    assertEquals(
        1, PageChecks.count(html, "<p>We hold back 3 old graphs until we have checked them.</p>"));
    assertEquals(
        1,
        PageChecks.count(
            ExplainPage.html(open, Optional.of(shown), 1),
            "<p>We hold back 1 old graph until we have checked it.</p>"));
    StudyOutcome answered =
        withoutCatalogue(firsts.stream().map(d -> d.answered("worn pads, as sold")).toList());
    assertEquals(
        0,
        PageChecks.count(
            ExplainPage.html(answered, Optional.of(shown), 0), "We are still checking"));
    List<Doubt> all =
        demo.outcome().kinds().stream()
            .flatMap(k -> k.paired().units().stream())
            .map(ExplainPageTest::doubted)
            .toList();
    StudyOutcome none = withoutCatalogue(all);
    assertEquals(Optional.empty(), new ExampleChoice(none, 2).example().value().graph());
    assertEquals(
        1,
        PageChecks.count(
            ExplainPage.html(none, Optional.empty(), 0),
            "<p>We are still checking those that could be shown.</p>"));
  }
}
