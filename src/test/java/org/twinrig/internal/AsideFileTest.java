package org.twinrig.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AsideFileTest {
  @TempDir Path temp;

  @Test
  void fileAppearsAsAWholeOrNotAtAll() throws IOException {
    Path target = Files.writeString(temp.resolve("t.csv"), "before");
    assertThrows(
        IOException.class,
        () ->
            AsideFile.replace(
                target,
                aside -> {
                  Files.writeString(aside, "half");
                  throw new IOException("full");
                }));
    assertEquals("before", Files.readString(target));
    assertFalse(Files.exists(AsideFile.of(target)));
    AsideFile.replace(target, aside -> Files.writeString(aside, "after"));
    assertEquals("after", Files.readString(target));
  }

  @Test
  void plantedLinkIsNotWrittenThrough() throws IOException {
    Path victim = Files.writeString(temp.resolve("victim"), "as is");
    Path target = temp.resolve("t.csv");
    Files.createSymbolicLink(AsideFile.of(target), victim);
    AsideFile.replace(target, aside -> Files.writeString(aside, "after"));
    assertEquals("as is", Files.readString(victim));
    assertEquals("after", Files.readString(target, java.nio.charset.StandardCharsets.UTF_8));
    assertFalse(Files.exists(AsideFile.of(target), LinkOption.NOFOLLOW_LINKS));
  }
}
