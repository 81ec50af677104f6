package org.twinrig.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.twinrig.translation.Sealed;

/**
 * A translation.json in which anything was changed, with a checksum that goes with it, is refused
 * in a sentence or gives results: never a fault of the program, and never a number that is none.
 */
class SpoiledTranslationTest {
  private static final Path SOUND = Path.of("src/test/resources/hostile/translation/window.json");
  private static final Pattern NO_NUMBER = Pattern.compile("\\b(NaN|Infinity)\\b|∞");

  /** Where, what is wrong, and what to do. */
  private static final Pattern SENTENCE = Pattern.compile("(?m)^\\S+: .+; .+$");

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  /** How many files are tried; a search for more takes the number from the command line. */
  private static final int SEEDS = Integer.getInteger("twinrig.spoiled", 150);

  @TempDir Path folder;

  private static ObjectNode sound(String from, String to) throws IOException {
    ObjectNode root = (ObjectNode) JsonMapper.builder().build().readTree(Files.readString(SOUND));
    ((ObjectNode) root.get("study").get("from")).put("label", from);
    ((ObjectNode) root.get("study").get("to")).put("label", to);
    ObjectNode handling = (ObjectNode) root.get("handling");
    handling.set("new_reference", handling.get("old_reference").deepCopy());
    ArrayNode kinds = (ArrayNode) root.get("kinds");
    kinds.add(((ObjectNode) kinds.get(0).deepCopy()).put("kind", "on-ear"));
    return root;
  }

  private String written(String name, JsonNode root) throws IOException {
    String text = root.toPrettyString().replaceFirst("(\"sha256\" : )[^\\n]*", "$1\"\",");
    return Files.writeString(folder.resolve(name), Sealed.text(text)).toString();
  }

  @BeforeEach
  void catalogue() throws IOException {
    Files.writeString(
        folder.resolve("g.csv"), "hz,db\n100,85\n500,90.5\n1000,91\n3000,99\n20000,70\n");
    Files.writeString(
        folder.resolve("catalogue.csv"),
        """
        graph,unit,kind,file,seatings,sides,form,smoothing,level,drive
        G-1,Rowan 1,in-ear,g.csv,3,2,raw,none,,
        G-2,Rowan 2,unknown,g.csv,,,raw,1/3,,
        G-3,Rowan 3,on-ear,g.csv,1,1,compensated,,,
        G-4,Rowan 4,in-ear,g.csv,1,1,raw,none,absolute,1 V
        """);
  }

  @Test
  void aSoundOneIsReadThrough() throws IOException {
    Ran ran = translated(written("a.json", sound("A", "B")), written("b.json", sound("B", "C")), 0);
    assertEquals(0, ran.status(), ran.err());
  }

  @Test
  void anythingChangedIsRefusedOrGivesNumbers() throws IOException {
    int refused = 0;
    for (int seed = 1; seed <= SEEDS; seed++) {
      SplittableRandom random = new SplittableRandom(seed);
      ObjectNode first = sound("A", "B");
      ObjectNode second = sound("B", "C");
      String change = spoil(random.nextBoolean() ? first : second, random);
      Ran ran = translated(written("a.json", first), written("b.json", second), random.nextInt(3));
      String told = ran.err() + "\nseed " + seed + ": " + change;
      assertTrue(ran.status() == 0 || ran.status() == 1, told);
      assertFalse(ran.err().contains("fault of the program"), told);
      assertFalse(NO_NUMBER.matcher(ran.out()).find(), told + ran.out());
      if (ran.status() == 0) {
        checkNumbers(told);
      } else {
        assertTrue(SENTENCE.matcher(ran.err()).find(), told);
        refused++;
      }
    }
    assertTrue(refused > SEEDS / 4 && refused < SEEDS, refused + " were refused");
  }

  /** Through both legs, through one, or as a reference curve. */
  private Ran translated(String first, String second, int way) {
    List<String> all = new ArrayList<>(List.of("translate", first, "--threads", "1"));
    if (way < 2) {
      all.addAll(List.of("--catalogue", folder.resolve("catalogue.csv").toString()));
    } else {
      all.addAll(List.of("--reference", folder.resolve("g.csv").toString(), "--kind", "on-ear"));
    }
    if (way == 0) {
      all.addAll(List.of("--then", second));
    }
    all.addAll(List.of("--out", folder.resolve("out").toString()));
    return Ran.of(all.toArray(String[]::new));
  }

  private void checkNumbers(String told) throws IOException {
    try (Stream<Path> files = Files.walk(folder.resolve("out"))) {
      for (Path file :
          files.filter(f -> f.toString().matches(".*\\.(csv|html|json|svg)")).toList()) {
        assertFalse(NO_NUMBER.matcher(Files.readString(file)).find(), file + "\n" + told);
      }
    }
  }

  /** Changes one part, and says which. */
  private static String spoil(ObjectNode root, SplittableRandom random) {
    List<JsonNode> owners = new ArrayList<>();
    owners(root, owners);
    JsonNode owner = owners.get(random.nextInt(owners.size()));
    if (owner instanceof ArrayNode list) {
      int at = random.nextInt(list.size());
      JsonNode was = list.get(at);
      switch (random.nextInt(4)) {
        case 0 -> list.remove(at);
        case 1 -> list.insert(at, was.deepCopy());
        default -> list.set(at, other(was, random));
      }
      return "element " + at + " was " + was + ": " + list;
    }
    ObjectNode group = (ObjectNode) owner;
    List<String> names = new ArrayList<>();
    group.fieldNames().forEachRemaining(names::add);
    String name = names.get(random.nextInt(names.size()));
    JsonNode was = group.get(name);
    if (random.nextInt(8) == 0) {
      group.remove(name);
    } else {
      group.set(name, other(was, random));
    }
    return name + " was " + was + ": " + group.get(name);
  }

  private static void owners(JsonNode node, List<JsonNode> found) {
    if (node.isContainerNode() && !node.isEmpty()) {
      found.add(node);
      node.forEach(child -> owners(child, found));
    }
  }

  private static JsonNode other(JsonNode was, SplittableRandom random) {
    if (was.isTextual() && random.nextInt(8) > 0) {
      List<String> texts =
          List.of(
              "",
              " ",
              "x",
              "none",
              "unknown",
              "../../x",
              "a\nb",
              "\u0000",
              "=1+1",
              "é".repeat(9000));
      return TextNode.valueOf(texts.get(random.nextInt(texts.size())));
    }
    if (was.isNumber() && random.nextInt(8) > 0) {
      double value = was.asDouble();
      double[] numbers = {
        0,
        -0.0,
        1,
        -1,
        -value,
        value + 1,
        value * 1000,
        value / 1000,
        100,
        600,
        -600,
        60_000,
        1e12,
        1e30,
        -1e30,
        1e308,
        -1e308,
        Double.MIN_VALUE,
        value * 1e-30,
        Math.copySign(Math.exp(random.nextDouble(-700, 700)), random.nextDouble() - 0.5)
      };
      double number =
          random.nextBoolean()
              ? numbers[random.nextInt(numbers.length)]
              : Math.copySign(1e308, random.nextDouble() - 0.5);
      return was.isIntegralNumber() && number == Math.rint(number) && Math.abs(number) < 2e9
          ? NODES.numberNode((int) number)
          : NODES.numberNode(number);
    }
    List<JsonNode> others =
        List.of(
            NODES.nullNode(),
            NODES.booleanNode(true),
            NODES.arrayNode(),
            NODES.objectNode(),
            NODES.numberNode(7),
            TextNode.valueOf("x"),
            NODES.arrayNode().add(was.deepCopy()));
    return others.get(random.nextInt(others.size()));
  }
}
