package org.twinrig.study;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.Node;
import org.twinrig.intake.Utf8File;
import org.twinrig.problem.Problem;
import org.twinrig.problem.UnusableInput;

/**
 * Text to YAML nodes. Only what a person writes by hand is taken: one document, of modest size and
 * depth, without anchors, aliases and tags, so that no file can blow up while it is read.
 */
record YamlFile(String source, String text) {
  private static final int MOST_BYTES = 256 * 1024;
  private static final int DEEPEST = 12;

  /** Reads the file; what is wrong with values later on goes to the problems. */
  static YamlValue read(Path file, String source, List<Problem> problems) throws UnusableInput {
    YamlFile yaml = new YamlFile(source, Utf8File.read(file, source, MOST_BYTES));
    return new YamlValue(yaml.root(), "", new YamlValue.Place(source, problems));
  }

  private Node root() throws UnusableInput {
    LoadSettings settings = LoadSettings.builder().setCodePointLimit(MOST_BYTES).build();
    try {
      refuseTricks(new Parse(settings).parseString(text));
      Optional<Node> root = new Compose(settings).composeString(text);
      if (root.isPresent()) {
        return root.get();
      }
    } catch (MarkedYamlEngineException e) {
      throw syntax(e);
    } catch (ReaderException e) {
      long before = text.codePoints().limit(e.getPosition()).filter(c -> c == '\n').count();
      throw unusable(
          (int) before + 1,
          String.format(Locale.ROOT, "the character U+%04X is not allowed", e.getCodePoint()),
          "take it out");
    } catch (YamlEngineException e) {
      throw unusable(0, "is not YAML (" + e.getMessage() + ")", "see the example of a study");
    }
    throw unusable(0, "is empty", "write at least title, from, to, fixtures, units and captures");
  }

  /** Composing recurses, so depth is checked on the flat run of events first. */
  private void refuseTricks(Iterable<Event> events) throws UnusableInput {
    int depth = 0;
    int documents = 0;
    for (Event event : events) {
      int line = line(event.getStartMark());
      switch (event.getEventId()) {
        case Alias -> throw unusable(line, "aliases are not used here", "repeat the value");
        case DocumentStart -> documents++;
        case SequenceStart, MappingStart -> depth++;
        case SequenceEnd, MappingEnd -> depth--;
        default -> {}
      }
      if (event instanceof NodeEvent node && node.getAnchor().isPresent()) {
        throw unusable(line, "anchors are not used here", "take the `&` name out");
      }
      // A tag asks for a value of another type, of which a study has none.
      Optional<String> tag =
          event instanceof ScalarEvent scalar
              ? scalar.getTag()
              : event instanceof CollectionStartEvent group ? group.getTag() : Optional.empty();
      if (tag.isPresent()) {
        String what = "the tag `" + tag.get() + "` is not used here";
        throw unusable(line, what, "take out what begins with `!`");
      }
      if (depth > DEEPEST) {
        throw unusable(line, "is nested too deep for a study", "close the brackets");
      }
      if (documents > 1) {
        throw unusable(line, "a second document begins", "write one study in one file");
      }
    }
  }

  private UnusableInput syntax(MarkedYamlEngineException e) {
    int line = line(e.getProblemMark());
    String written = text.lines().skip(Math.max(0, line - 1L)).findFirst().orElse("");
    if (line > 0 && written.matches("(?s)\\s*\\t.*")) {
      return unusable(line, "a tab stands in the indent", "YAML is indented with spaces");
    }
    return unusable(
        line,
        "is not YAML here (" + e.getProblem().replace("\\t(TAB)", "tab") + ")",
        "check indents, colons, brackets and quotes in this line and the one above");
  }

  /** The line of a place, from 1; 0 where none is known. */
  static int line(Optional<Mark> place) {
    return place.map(Mark::getLine).orElse(-1) + 1;
  }

  private UnusableInput unusable(int line, String what, String remedy) {
    return UnusableInput.fatal(source, line, what, remedy);
  }
}
