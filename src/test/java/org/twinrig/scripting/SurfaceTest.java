package org.twinrig.scripting;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What scripts may call, as approved. A change here is a change of what is promised: it needs a
 * line in the change log, and src/test/resources/scripting/surface.txt brought up to date.
 */
class SurfaceTest {
  private static final List<String> OF_EVERY_RECORD = List.of("equals", "hashCode", "toString");

  @Test
  void nothingIsAddedOrTakenAwayByAccident() throws Exception {
    List<Class<?>> types = new ArrayList<>();
    for (JavaClass type :
        new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.twinrig.scripting")) {
      Class<?> reflected = type.reflect();
      if (Modifier.isPublic(reflected.getModifiers())) {
        types.add(reflected);
      }
    }
    assertFalse(types.isEmpty());
    types.sort(Comparator.comparing(Class::getName));
    StringBuilder surface = new StringBuilder();
    types.forEach(type -> describe(type, surface));

    assertEquals(
        Files.readString(Path.of("src/test/resources/scripting/surface.txt")), surface.toString());
  }

  private static void describe(Class<?> type, StringBuilder surface) {
    surface.append(type.isRecord() ? "record " : "class ").append(type.getName()).append('\n');
    List<String> members = new ArrayList<>();
    for (Constructor<?> constructor : type.getConstructors()) {
      members.add(brief(constructor.toGenericString()));
    }
    for (Method method : type.getDeclaredMethods()) {
      if (Modifier.isPublic(method.getModifiers())
          && !method.isSynthetic()
          && !OF_EVERY_RECORD.contains(method.getName())) {
        members.add(brief(method.toGenericString()));
      }
    }
    members.sort(Comparator.naturalOrder());
    members.forEach(member -> surface.append("  ").append(member).append('\n'));
  }

  /** Without packages and modifiers that say nothing to a caller. */
  private static String brief(String member) {
    String plain = member.replaceAll("([a-z0-9]+\\.)+(?=[A-Z])", "").replace("public final ", "");
    return String.join(" ", Arrays.asList(plain.replace("public ", "").split(" +")));
  }
}
