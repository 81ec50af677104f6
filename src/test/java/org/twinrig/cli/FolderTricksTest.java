package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.twinrig.internal.Sha256;

/**
 * Ways to lose files by naming a place for results. Each is refused in one sentence before any
 * work, and afterwards everything in the lab is, byte for byte, as it was.
 */
class FolderTricksTest {
  private static final String OUT = "; name another folder with --out";
  private static final String AWAY = "; move it away, or name another folder with --out";
  private static final String REMOVE =
      "; remove the folder if nothing in it is yours, or name another folder with --out";

  @TempDir private static Path temp;
  private static Path sound;
  private static Path lab;

  /** What is done to the lab before the command. */
  @FunctionalInterface
  private interface Deed {
    void in(Path lab) throws Exception;
  }

  /**
   * One way to lose files.
   *
   * @param name of it
   * @param deed what is done to the lab first
   * @param command what is run, with {@code @} for the lab's folder
   * @param refusal what is said, likewise
   */
  private record Trick(String name, Deed deed, String command, String refusal) {
    @Override
    public String toString() {
      return name;
    }
  }

  /** A lab with a study, its results, a catalogue taken through it, and a plan. */
  @BeforeAll
  static void lab() throws IOException {
    sound = Files.createDirectory(temp.toRealPath().resolve("sound"));
    ran(
        sound,
        "simulate --seed 1 --units 4 --seatings 2 --kinds in-ear --points 60 --catalogue 3 --out"
            + " @/s");
    Files.writeString(
        sound.resolve("s/study.yaml"),
        Files.readString(sound.resolve("s/study.yaml"))
            + "bands: { per_octave: 1, from_hz: 100, to_hz: 8000 }\n");
    ran(sound, "study @/s");
    ran(sound, "translate @/s/results/translation.json --catalogue @/s/catalogue.csv --out @/cat");
    ran(sound, "plan @/s --out @/plan");
    ran(sound, "explain @/s");
    Files.writeString(sound.resolve("notes.txt"), "dear diary\n");
  }

  private static void ran(Path place, String command) {
    Ran ran = run(place, command);
    assertEquals(0, ran.status(), ran.err());
  }

  private static Ran run(Path place, String command) {
    return Ran.of(command.replace("@", place.toString()).split(" "));
  }

  @BeforeEach
  void copy() throws IOException {
    lab = Files.createTempDirectory(temp.toRealPath(), "lab");
    try (Stream<Path> all = Files.walk(sound)) {
      for (Path path : all.skip(1).toList()) {
        Files.copy(path, lab.resolve(sound.relativize(path).toString()));
      }
    }
  }

  private static Deed nothing() {
    return lab -> {};
  }

  private static Deed write(String file, String text) {
    return lab -> {
      Files.createDirectories(lab.resolve(file).resolveSibling(""));
      Files.writeString(lab.resolve(file), text);
    };
  }

  private static Deed link(String link, String to) {
    return lab -> {
      Files.deleteIfExists(lab.resolve(link));
      Files.createSymbolicLink(lab.resolve(link), lab.resolve(to));
    };
  }

  private static Trick out(String name, Deed deed, String out, String refusal) {
    return new Trick(name, deed, "study @/s --out @" + out, "@" + refusal);
  }

  private static Trick results(String name, Deed deed, String refusal) {
    return new Trick(name, deed, "study @/s", "@/s/results: " + refusal);
  }

  /** The place is an input, holds one, or lies where results are. */
  private static List<Trick> inputs() {
    String first = "`plate/alder-1-M-1.csv`, which this run reads" + OUT;
    return List.of(
        out("the study", nothing(), "/s", "/s: is the folder of the study itself" + OUT),
        out("with a slash", nothing(), "/s/", "/s: is the folder of the study itself" + OUT),
        out("by dots", nothing(), "/s/x/..", "/s/x/..: is the folder of the study itself" + OUT),
        out(
            "through results",
            nothing(),
            "/s/results/../../s",
            "/s/results/../../s: is the folder of the study itself" + OUT),
        out("dot", nothing(), "/s/.", "/s/.: is the folder of the study itself" + OUT),
        out("the parent", nothing(), "", ": holds the study `@/s`" + OUT),
        out("the parent by dots", nothing(), "/s/..", "/s/..: holds the study `@/s`" + OUT),
        out("captures", nothing(), "/s/captures", "/s/captures: holds " + first),
        out(
            "captures of one fixture",
            nothing(),
            "/s/captures/plate",
            "/s/captures/plate: holds `alder-1-M-1.csv`, which this run reads" + OUT),
        out(
            "captures through a linked folder",
            link("door", "s"),
            "/door/captures",
            "/door/captures: holds " + first),
        out("study.yaml", nothing(), "/s/study.yaml", "/s/study.yaml: is read by this run" + OUT),
        out("a table", nothing(), "/s/units.csv", "/s/units.csv: is read by this run" + OUT),
        out(
            "a capture",
            nothing(),
            "/s/captures/plate/alder-1-M-1.csv",
            "/s/captures/plate/alder-1-M-1.csv: is read by this run" + OUT),
        out(
            "below a file",
            nothing(),
            "/s/units.csv/x",
            "/s/units.csv/x: `@/s/units.csv` is a file, not a folder" + OUT),
        out(
            "the catalogue's graphs",
            nothing(),
            "/s/catalogue",
            "/s/catalogue: holds `g-001.csv`, which this run reads" + OUT),
        out(
            "below results",
            nothing(),
            "/s/results/new",
            "/s/results/new: lies inside `@/s/results`, which holds results of twinrig" + OUT),
        out(
            "far below other results",
            nothing(),
            "/cat/translated/a/b",
            "/cat/translated/a/b: lies inside `@/cat`, which holds results of twinrig" + OUT),
        new Trick(
            "the results translated by",
            nothing(),
            "translate @/s/results/translation.json --catalogue @/s/catalogue.csv --out @/s/results",
            "@/s/results: holds `translation.json`, which this run reads" + OUT),
        new Trick(
            "graphs that are results",
            lab ->
                Files.writeString(
                    lab.resolve("again.csv"),
                    "graph,unit,kind,file\nG,Alder 1,in-ear,cat/translated/G-001.csv\n"),
            "translate @/s/results/translation.json --catalogue @/again.csv --out @/cat",
            "@/cat: holds `translated/G-001.csv`, which this run reads" + OUT),
        new Trick(
            "a reference curve's folder",
            write("ref/curve.csv", "10,3\n22000,1\n"),
            "translate @/s/results/translation.json --reference @/ref/curve.csv --kind in-ear --out"
                + " @/ref",
            "@/ref: holds `curve.csv`, which this run reads" + OUT),
        new Trick(
            "a study that is compared",
            nothing(),
            "compare @/s @/s --out @/s",
            "@/s: is the folder of the study itself" + OUT),
        new Trick(
            "the planned study", nothing(), "plan @/s --out @", "@: holds the study `@/s`" + OUT));
  }

  /** The place is none of ours. */
  private static List<Trick> foreign() {
    String link = ": the folder is a link; name the folder it leads to, or" + OUT.substring(1);
    return List.of(
        out("a link", link("door", "plan"), "/door", "/door" + link),
        out("a link with a slash", link("door", "plan"), "/door/", "/door" + link),
        out("a link to the study", link("door", "s"), "/door", "/door" + link),
        out("a link to nothing", link("door", "gone"), "/door", "/door" + link),
        out("a link to a file", link("door", "notes.txt"), "/door", "/door" + link),
        out("a file", nothing(), "/notes.txt", "/notes.txt: is a file" + OUT),
        out(
            "another study below",
            write("b/c/study.yaml", "title: x\n"),
            "/b",
            "/b: `c` in it was not written by twinrig" + AWAY),
        out(
            "a thesis beside a run.json",
            lab -> {
              write("t/run.json", "{}").in(lab);
              write("t/thesis.tex", "dear").in(lab);
            },
            "/t",
            "/t: `run.json` is in it, but no `manifest.sha256` to tell what twinrig wrote from what"
                + " is yours, as in results of earlier versions"
                + REMOVE),
        results(
            "results of an earlier version",
            lab -> Files.delete(lab.resolve("s/results/manifest.sha256")),
            "`run.json` is in it, but no `manifest.sha256` to tell what twinrig wrote from what is"
                + " yours, as in results of earlier versions"
                + REMOVE),
        out(
            "somebody's own manifest",
            lab -> {
              write("t/a.txt", "a").in(lab);
              write("t/manifest.sha256", Sha256.hex(new byte[] {'a'}) + "  a.txt\n").in(lab);
            },
            "/t",
            "/t: `a.txt` in it was not written by twinrig" + AWAY),
        out(
            "results of another command",
            nothing(),
            "/cat",
            "/cat: holds catalogue results, not study results; remove the folder if you do not need"
                + " them, or"
                + OUT.substring(1)),
        new Trick(
            "results of a study",
            nothing(),
            "plan @/s --out @/s/results",
            "@/s/results: holds study results, not plan results; remove the folder if you do not"
                + " need them, or"
                + OUT.substring(1)),
        results(
            "somebody's hidden folder beside",
            write("s/.results.writing/thesis.tex", "dear"),
            "`@/s/.results.writing` is in the way; move it away if it is yours, or"
                + OUT.substring(1)),
        results(
            "another one",
            write("s/.results.earlier/thesis.tex", "dear"),
            "`@/s/.results.earlier` is in the way; move it away if it is yours, or"
                + OUT.substring(1)));
  }

  /** The results are no longer as they were written. */
  private static List<Trick> changed() {
    return List.of(
        results(
            "a note",
            write("s/results/notes.txt", "mine"),
            "`notes.txt` in it was not written by twinrig" + AWAY),
        results(
            "a note among figures",
            write("s/results/figures/notes.txt", "mine"),
            "`figures/notes.txt` in it was not written by twinrig" + AWAY),
        results(
            "a hidden note",
            write("s/results/.notes", "mine"),
            "`.notes` in it was not written by twinrig" + AWAY),
        results(
            "an empty folder",
            lab -> Files.createDirectory(lab.resolve("s/results/keep")),
            "`keep` in it is a folder that twinrig did not make" + AWAY),
        results(
            "a link",
            link("s/results/door", "notes.txt"),
            "`door` in it is a link, and twinrig makes none" + AWAY),
        results(
            "a link to nothing",
            link("s/results/door", "gone"),
            "`door` in it is a link, and twinrig makes none" + AWAY),
        results(
            "an edited report",
            lab ->
                Files.writeString(
                    lab.resolve("s/results/report.html"),
                    Files.readString(lab.resolve("s/results/report.html")) + "<!-- mine -->"),
            "`report.html` in it was changed after twinrig had written it" + AWAY),
        results(
            "an emptied table",
            write("s/results/transfer.csv", ""),
            "`transfer.csv` in it was changed after twinrig had written it" + AWAY),
        results(
            "a folder in a file's place",
            lab -> {
              Files.delete(lab.resolve("s/results/transfer.csv"));
              Files.createDirectory(lab.resolve("s/results/transfer.csv"));
            },
            "`transfer.csv` in it is a folder that twinrig did not make" + AWAY),
        results(
            "a link to the same content",
            lab -> {
              Files.move(lab.resolve("s/results/transfer.csv"), lab.resolve("kept.csv"));
              link("s/results/transfer.csv", "kept.csv").in(lab);
            },
            "`transfer.csv` in it is a link, and twinrig makes none" + AWAY),
        results(
            "a linked folder of figures",
            lab -> {
              Files.move(lab.resolve("s/results/figures"), lab.resolve("figures"));
              link("s/results/figures", "figures").in(lab);
            },
            "`figures` in it is a link, and twinrig makes none" + AWAY),
        results(
            "a pipe",
            lab ->
                assumeTrue(
                    new ProcessBuilder("mkfifo", lab + "/s/results/pipe").start().waitFor() == 0),
            "`pipe` in it is neither a file nor a folder" + AWAY),
        results(
            "a manifest that lists more",
            lab ->
                Files.writeString(
                    lab.resolve("s/results/manifest.sha256"),
                    Files.readString(lab.resolve("s/results/manifest.sha256"))
                        + Sha256.hex(lab.resolve("notes.txt"))
                        + "  ../../notes.txt\n"),
            "`manifest.sha256` in it was changed after twinrig had written it" + REMOVE),
        results(
            "a manifest that lists less",
            lab -> {
              Path manifest = lab.resolve("s/results/manifest.sha256");
              List<String> lines = new ArrayList<>(Files.readAllLines(manifest));
              lines.remove(lines.size() - 1);
              Files.writeString(manifest, String.join("\n", lines) + "\n");
            },
            "`zones.csv` in it was not written by twinrig" + AWAY),
        results(
            "a manifest with the line ends of Windows",
            lab -> {
              Path manifest = lab.resolve("s/results/manifest.sha256");
              Files.writeString(manifest, Files.readString(manifest).replace("\n", "\r\n"));
            },
            "`manifest.sha256` in it was changed after twinrig had written it" + REMOVE),
        results(
            "a manifest that is a link",
            lab -> {
              Files.move(lab.resolve("s/results/manifest.sha256"), lab.resolve("manifest"));
              link("s/results/manifest.sha256", "manifest").in(lab);
            },
            "`run.json` is in it, but no `manifest.sha256` to tell what twinrig wrote from what is"
                + " yours, as in results of earlier versions"
                + REMOVE));
  }

  /** Pages, tables and studies in places of their own. */
  private static List<Trick> files() {
    String among =
        ": lies inside `@/s/results`, which holds results of twinrig; name another place"
            + " with --out";
    String page =
        ": is there already, and is not known to be a page of twinrig that nobody changed; move it"
            + " away, or name another file with --out";
    return List.of(
        new Trick(
            "a page among results",
            nothing(),
            "explain @/s --out @/s/results/p.html",
            "@/s/results/p.html" + among),
        new Trick(
            "a page of somebody's",
            write("mine.html", "<!DOCTYPE html>\n<p>mine"),
            "explain @/s --out @/mine.html",
            "@/mine.html" + page),
        new Trick(
            "a page that was edited",
            lab ->
                Files.writeString(
                    lab.resolve("s/explained.html"),
                    Files.readString(lab.resolve("s/explained.html")).replace("<p", "<p ")),
            "explain @/s --out @/s/explained.html",
            "@/s/explained.html" + page),
        new Trick(
            "a page that is a link",
            link("door.html", "notes.txt"),
            "explain @/s --out @/door.html",
            "@/door.html: is a link; name a file with --out"),
        new Trick(
            "a simulated study in place of a link",
            lab -> {
              Files.createDirectory(lab.resolve("empty"));
              link("door", "empty").in(lab);
            },
            "simulate --seed 1 --units 1 --seatings 1 --kinds in-ear --points 30 --out @/door",
            "@/door: is a link; name a folder that does not exist yet, or an empty one"),
        new Trick(
            "a simulated study among results",
            nothing(),
            "simulate --seed 1 --out @/s/results/new",
            "@/s/results/new" + among),
        new Trick(
            "gathered tables among results",
            nothing(),
            "gather @/s/captures --pattern {fixture}/{unit}-{side}-{seating}.csv --kind in-ear --out"
                + " @/s/results/captures.csv",
            "@/s/results/captures.csv" + among));
  }

  private static Stream<Trick> tricks() {
    return Stream.of(inputs(), foreign(), changed(), files()).flatMap(List::stream);
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("tricks")
  void isRefusedInOneSentenceAndNothingIsTouched(Trick trick) throws Exception {
    trick.deed().in(lab);
    Map<String, String> before = tree();
    Ran ran = run(lab, trick.command());
    assertEquals(trick.refusal().replace("@", lab.toString()) + "\n", ran.err());
    assertEquals("", ran.out());
    assertEquals(1, ran.status());
    assertEquals(before, tree());
  }

  /** Everything in the lab: folders, links with where they lead, files with their SHA-256. */
  private static Map<String, String> tree() throws IOException {
    Map<String, String> tree = new TreeMap<>();
    try (Stream<Path> all = Files.walk(lab)) {
      for (Path path : all.toList()) {
        String content = "folder";
        if (Files.isSymbolicLink(path)) {
          content = "link to " + Files.readSymbolicLink(path);
        } else if (Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS)) {
          content = Sha256.hex(path);
        } else if (!Files.isDirectory(path)) {
          content = "other";
        }
        tree.put(lab.relativize(path).toString(), content);
      }
    }
    return tree;
  }
}
