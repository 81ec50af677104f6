package org.twinrig.notebooks;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A notebook file of nbformat 4.5: its code cells and the outputs they carry. */
final class Notebook {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final Path file;
  private final ObjectNode root;

  private Notebook(Path file, ObjectNode root) {
    this.file = file;
    this.root = root;
  }

  static Notebook read(Path file) throws IOException {
    return new Notebook(file, (ObjectNode) JSON.readTree(Files.readString(file)));
  }

  /** One code cell. */
  record Cell(ObjectNode node) {
    String id() {
      return node.get("id").asText();
    }

    String source() {
      return joined(node.get("source"));
    }

    List<CellOutput> outputs() {
      List<CellOutput> outputs = new ArrayList<>();
      for (JsonNode output : node.get("outputs")) {
        outputs.add(
            switch (output.get("output_type").asText()) {
              case "stream" -> new CellOutput.Text(joined(output.get("text")));
              case "display_data" ->
                  new CellOutput.Picture(joined(output.get("data").get("image/png")));
              default -> throw new AssertionError("cells give text and pictures: " + output);
            });
      }
      return outputs;
    }

    void setOutputs(int count, List<CellOutput> outputs) {
      node.put("execution_count", count);
      ArrayNode all = node.putArray("outputs");
      for (CellOutput output : outputs) {
        if (output instanceof CellOutput.Text text) {
          ArrayNode lines =
              all.addObject().put("name", "stdout").put("output_type", "stream").putArray("text");
          text.text().lines().forEach(line -> lines.add(line + "\n"));
        } else if (output instanceof CellOutput.Picture picture) {
          ObjectNode shown = all.addObject();
          shown.putObject("data").put("image/png", picture.png());
          shown.putObject("metadata");
          shown.put("output_type", "display_data");
        }
      }
    }

    private static String joined(JsonNode text) {
      StringBuilder all = new StringBuilder();
      text.forEach(line -> all.append(line.asText()));
      return text.isTextual() ? text.asText() : all.toString();
    }
  }

  List<Cell> code() {
    List<Cell> cells = new ArrayList<>();
    for (JsonNode cell : root.get("cells")) {
      if (cell.get("cell_type").asText().equals("code")) {
        cells.add(new Cell((ObjectNode) cell));
      }
    }
    return cells;
  }

  /** The text of the file: one space a level, as notebook programs write it. */
  String text() throws IOException {
    DefaultIndenter indent = new DefaultIndenter(" ", "\n");
    DefaultPrettyPrinter printer =
        new DefaultPrettyPrinter()
            .withSeparators(
                Separators.createDefaultInstance()
                    .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
                    .withObjectEmptySeparator("")
                    .withArrayEmptySeparator(""));
    printer.indentArraysWith(indent);
    printer.indentObjectsWith(indent);
    return JSON.writer(printer).writeValueAsString(root) + "\n";
  }

  void write() throws IOException {
    Files.writeString(file, text());
  }
}
