package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.problem.Findings;
import org.twinrig.study.Settings;
import org.twinrig.study.Study;
import org.twinrig.study.StudyReader;
import picocli.CommandLine;

/** What the pages of the project tell a reader to type does what they say. */
class ReadmeTest {
  private static final Path README = Path.of("README.md");
  private static final Path DEVELOPERS = Path.of("DEVELOPERS.md");
  private static final Path IN_FULL = Path.of("studies", "README.md");

  /** These run for long or until they are stopped; they have tests of their own. */
  private static final Set<String> ONLY_UNDERSTOOD = Set.of("demo", "workbench");

  /** Studies whose size a page leaves open are small here. */
  private static final List<String> SMALL =
      List.of(
          "--units", "6", "--seatings", "2", "--points", "100", "--kinds", "in-ear", "--one-side");

  private static final Pattern WORD = Pattern.compile("'([^']*)'|\"([^\"]*)\"|(\\S+)");

  @TempDir private static Path place;

  /** Everything the pages take for granted: exports, a catalogue, studies to compare. */
  @BeforeAll
  static void layOut() throws IOException {
    Ran.copy(Path.of("studies", "planted-no"), place.resolve("studies/planted-no"));
    Ran.copy(Path.of("studies", "published-couplers"), place.resolve("studies/published-couplers"));
    Ran.copy(Path.of("studies", "planted-no", "catalogue"), place.resolve("catalogue"));
    Files.copy(Path.of("studies", "planted-no", "catalogue.csv"), place.resolve("catalogue.csv"));
    for (String fixture : List.of("plate", "head")) {
      Path file = place.resolve("exports/in-ear/alder 1_" + fixture + "_L_1.txt");
      Files.createDirectories(file.getParent());
      Files.writeString(file, "20,1\n20000,2\n");
    }
    simulated("study-2026", "3");
    simulated("study-of-another-lab", "4");
    assertEquals(0, Ran.of("study", place.resolve("study-2026").toString()).status());
    Files.copy(
        place.resolve("study-2026/results/translation.json"), place.resolve("translation.json"));
  }

  private static void simulated(String name, String seed) {
    List<String> words =
        new ArrayList<>(
            List.of("simulate", "--out", place.resolve(name).toString(), "--seed", seed));
    words.addAll(SMALL);
    Ran ran = Ran.of(words.toArray(String[]::new));
    assertEquals(0, ran.status(), ran.err());
  }

  /** Commands in the indented blocks of all pages, page by page in the order they stand. */
  private static List<String> commands() throws IOException {
    List<String> commands = new ArrayList<>();
    for (Path page : pages()) {
      Files.readAllLines(page).stream()
          .filter(line -> line.startsWith("    ./twinrig "))
          .map(line -> line.strip().replaceFirst("\\s+# .*", ""))
          .forEach(commands::add);
    }
    return commands;
  }

  private static List<Path> pages() throws IOException {
    List<Path> pages = new ArrayList<>(List.of(README, DEVELOPERS));
    for (String folder : List.of("studies", "demo-data", "notebooks-java")) {
      try (Stream<Path> all = Files.walk(Path.of(folder))) {
        all.filter(p -> p.getFileName().toString().equals("README.md"))
            .sorted()
            .forEach(pages::add);
      }
    }
    return pages;
  }

  private static List<String> words(String command) {
    List<String> words = new ArrayList<>();
    Matcher matcher = WORD.matcher(command);
    while (matcher.find()) {
      for (int group = 1; group <= 3; group++) {
        if (matcher.group(group) != null) {
          words.add(matcher.group(group));
        }
      }
    }
    return words.subList(1, words.size());
  }

  @Test
  void everyCommandOnThePagesRuns() throws IOException {
    int ran = 0;
    for (String command : commands()) {
      List<String> words = words(command);
      if (ONLY_UNDERSTOOD.contains(words.get(0))) {
        new CommandLine(new Main())
            .setCaseInsensitiveEnumValuesAllowed(true)
            .parseArgs(words.toArray(String[]::new));
      } else {
        // The one study that is refused, as its page says.
        int expected = command.endsWith("published-couplers/supra-aural") ? 1 : 0;
        Ran done = Ran.of(inPlace(words));
        assertEquals(expected, done.status(), command + "\n" + done.err());
        ran++;
      }
    }
    assertTrue(ran >= 10, "commands were found and run: " + ran);
    theStudyThatSaysNoIsMadeAsItsPageSays();
  }

  private static String[] inPlace(List<String> words) {
    List<String> placed = new ArrayList<>();
    for (String word : words) {
      boolean result = !placed.isEmpty() && words.get(placed.size() - 1).equals("--out");
      boolean there = !word.startsWith("-") && Files.exists(place.resolve(word));
      placed.add(result || there ? place.resolve(word).toString() : word);
    }
    if (words.get(0).equals("simulate") && !words.contains("--units")) {
      placed.addAll(SMALL);
    }
    return placed.toArray(String[]::new);
  }

  private static void theStudyThatSaysNoIsMadeAsItsPageSays() throws IOException {
    Path committed = Path.of("studies", "planted-no");
    for (String folder : List.of("captures", "catalogue")) {
      for (String file : Ran.files(committed.resolve(folder))) {
        assertArrayEquals(
            Files.readAllBytes(place.resolve("planted-no").resolve(folder).resolve(file)),
            Files.readAllBytes(committed.resolve(folder).resolve(file)),
            file);
      }
    }
  }

  @Test
  void theTablesOfCommandsNameAllOfThemAndOnlyOptionsThatExist() throws IOException {
    CommandLine program = new CommandLine(new Main());
    Set<String> named = new TreeSet<>();
    List<String> lines = Files.readAllLines(IN_FULL);
    for (String line : lines) {
      Matcher row = Pattern.compile("^\\| `\\./twinrig ([a-z-]+)([^`]*)`.*").matcher(line);
      if (row.matches()) {
        named.add(row.group(1));
        CommandLine command = program.getSubcommands().get(row.group(1));
        assertTrue(command != null, line);
        Matcher option = Pattern.compile("--[a-z-]+").matcher(row.group(2));
        while (option.find()) {
          assertTrue(
              command.getCommandSpec().findOption(option.group()) != null,
              row.group(1) + " has no " + option.group());
        }
      }
    }
    assertEquals(new TreeSet<>(program.getSubcommands().keySet()), named);
  }

  /** The study file to start from is read without a problem and holds the defaults. */
  @Test
  void theStudyFileToStartFromHoldsTheDefaults() throws Exception {
    String text = Files.readString(IN_FULL);
    Matcher block = Pattern.compile("```yaml\n(title:.*?)```", Pattern.DOTALL).matcher(text);
    assertTrue(block.find());
    Path folder = place.resolve("started");
    Ran.copy(place.resolve("study-2026"), folder);
    String started = block.group(1).replace("# sessions: sessions.csv", "sessions: sessions.csv");
    assertTrue(started.contains("\nsessions: sessions.csv"));
    Files.writeString(folder.resolve("study.yaml"), started);
    Findings<Study> read = StudyReader.read(folder);
    assertEquals(List.of(), read.problems());
    assertEquals(Settings.defaults(), read.value().settings());
  }

  /** The page that lists keys in full names those that the reader of study.yaml knows. */
  @Test
  void everyKeyOfAStudyIsExplained() throws IOException {
    assertEquals(
        knownBeside("title:"), explained("## Keys of study.yaml", "### Fixtures"), "of a study");
    Set<String> ofFixtures = explained("### Fixtures", "`specified_hz`");
    ofFixtures.add("specified_hz"); // said below the table
    assertEquals(knownBeside("label:"), ofFixtures, "of a fixture");
  }

  /** What the reader lists where a key beside this one is not known. */
  private static Set<String> knownBeside(String key) throws IOException {
    Path folder = place.resolve("unknown-beside-" + key.replace(":", ""));
    Ran.copy(place.resolve("study-2026"), folder);
    Path yaml = folder.resolve("study.yaml");
    String comma = key.equals("label:") ? ", " : "\n";
    Files.writeString(yaml, Files.readString(yaml).replaceFirst(key, "zzz: 1" + comma + key));
    String message = Ran.of("study", folder.toString()).err();
    Matcher known = Pattern.compile("known keys here: ([a-z_, ]+)").matcher(message);
    assertTrue(known.find(), message);
    return new TreeSet<>(List.of(known.group(1).split(", ")));
  }

  private static Set<String> explained(String from, String to) throws IOException {
    String page = Files.readString(IN_FULL);
    int begin = page.indexOf(from);
    return page.substring(begin, page.indexOf(to, page.indexOf("\n\n|", begin)))
        .lines()
        .filter(line -> line.startsWith("| `"))
        .flatMap(line -> Stream.of(line.substring(2, line.indexOf(" | ", 2)).split(", ")))
        .map(key -> key.replace("`", ""))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Every path the pages point to is there. */
  @Test
  void everyLinkLeadsSomewhere() throws IOException {
    int links = 0;
    for (Path page : pages()) {
      Matcher link = Pattern.compile("\\]\\(([^)#:]+)(#[^)]*)?\\)").matcher(Files.readString(page));
      while (link.find()) {
        Path target = page.toAbsolutePath().resolveSibling(link.group(1));
        assertTrue(Files.exists(target), page + " points to " + link.group(1));
        links++;
      }
    }
    assertTrue(links > 20, "links were found: " + links);
  }

  /** Every heading that a page points to stands, on this page or another. */
  @Test
  void everyHeadingThatIsLinkedStands() throws IOException {
    int links = 0;
    for (Path page : pages()) {
      Matcher link = Pattern.compile("\\]\\(([^)#:]*)#([^)]+)\\)").matcher(Files.readString(page));
      while (link.find()) {
        Path target =
            link.group(1).isEmpty() ? page : page.toAbsolutePath().resolveSibling(link.group(1));
        assertTrue(headings(target).contains(link.group(2)), page + " points to " + link.group());
        links++;
      }
    }
    assertTrue(links > 30, "links were found: " + links);
  }

  /** What a forge makes of headings, to be pointed to. */
  private static Set<String> headings(Path page) throws IOException {
    return Files.readString(page)
        .lines()
        .filter(line -> line.startsWith("#"))
        .map(line -> line.replaceFirst("#+ ", "").toLowerCase(Locale.ROOT))
        .map(title -> title.replaceAll("[^a-z0-9 -]", "").replace(' ', '-'))
        .collect(Collectors.toSet());
  }

  /** The page that lists results in full names every file that a study writes. */
  @Test
  void everyTableOfAStudyIsNamed() throws IOException {
    String text = Files.readString(IN_FULL);
    for (String file : Ran.files(place.resolve("study-2026/results"))) {
      if (!file.contains("/")) {
        assertTrue(
            text.contains("`" + file + "`") || file.equals("explained.html"),
            IN_FULL + " names " + file);
      }
    }
  }
}
