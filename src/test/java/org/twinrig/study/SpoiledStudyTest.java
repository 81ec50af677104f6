package org.twinrig.study;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Every fault a study may have is told to the lab word for word as approved. */
class SpoiledStudyTest {
  @TempDir Path temp;

  @TestFactory
  Stream<DynamicTest> yaml() throws IOException {
    return cases("/study/spoiled-yaml.txt", 60);
  }

  @TestFactory
  Stream<DynamicTest> tables() throws IOException {
    return cases("/study/spoiled-tables.txt", 40);
  }

  private Stream<DynamicTest> cases(String resource, int atLeast) throws IOException {
    List<List<String>> blocks = blocks(resource);
    assertTrue(blocks.size() >= atLeast, "only " + blocks.size() + " faults were found");
    return IntStream.range(0, blocks.size())
        .mapToObj(
            i ->
                DynamicTest.dynamicTest(
                    title(blocks.get(i)), () -> check(blocks.get(i), temp.resolve("case-" + i))));
  }

  private static void check(List<String> block, Path folder) throws IOException {
    LabFolder lab = LabFolder.in(folder);
    int at = 0;
    while (at + 2 < block.size() && block.get(at + 1).startsWith("- ")) {
      spoil(lab, block.get(at), text(block.get(at + 1)), text(block.get(at + 2)));
      at += 3;
    }
    List<String> approved = block.subList(at, block.size());
    assertEquals(
        String.join("\n", approved).replace("KEYS", KnownKeys.listed()),
        String.join("\n", lab.problems()));
  }

  private static void spoil(LabFolder lab, String file, String sound, String spoiled)
      throws IOException {
    if (sound.equals("*")) {
      lab.write(file, spoiled);
    } else {
      lab.spoil(file, sound, spoiled);
    }
  }

  private static String text(String line) {
    return line.substring(2).translateEscapes();
  }

  private static String title(List<String> block) {
    return block.get(0) + " " + block.get(2);
  }

  private static List<List<String>> blocks(String resource) throws IOException {
    List<List<String>> blocks = new ArrayList<>();
    List<String> block = new ArrayList<>();
    for (String line : lines(resource)) {
      if (!line.isEmpty()) {
        block.add(line);
      } else if (!block.isEmpty()) {
        blocks.add(List.copyOf(block));
        block.clear();
      }
    }
    blocks.add(List.copyOf(block));
    return blocks;
  }

  private static List<String> lines(String resource) throws IOException {
    try (InputStream in = SpoiledStudyTest.class.getResourceAsStream(resource)) {
      String all = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return all.lines().filter(line -> !line.startsWith("# ")).toList();
    }
  }
}
