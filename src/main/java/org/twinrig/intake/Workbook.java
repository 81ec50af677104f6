package org.twinrig.intake;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ExcelReaderException;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import org.twinrig.problem.UnusableInput;

/**
 * A spreadsheet of the form of ISO/IEC 29500 ({@code .xlsx}): of formulas their values as they were
 * saved, of dates the day (and time) after ISO 8601, of numbers all their digits whatever the sheet
 * shows of them.
 */
final class Workbook {
  /** As spreadsheets show what cannot be worked out. */
  private static final Pattern ERROR =
      Pattern.compile("#(REF!|DIV/0!|N/A|NAME\\?|NUM!|VALUE!|NULL!|SPILL!|CALC!)");

  private static final long MOST_UNPACKED = 200L * 1024 * 1024;

  private static final String NO_SHEETS =
      "begins as a spreadsheet or a zip archive does, but cannot be read as one";

  private final byte[] bytes;
  private final String source;

  /** Of a file whose problems name it so. */
  Workbook(byte[] bytes, String source) {
    this.bytes = bytes;
    this.source = source;
  }

  /** Whether a file begins as a zip archive, which such a spreadsheet is. */
  static boolean is(byte[] bytes) {
    return bytes.length > 3 && bytes[0] == 'P' && bytes[1] == 'K' && bytes[2] == 3 && bytes[3] == 4;
  }

  /**
   * The rows of the sheet that is named after the table, or else of the first one.
   *
   * @param table such as {@code units}
   */
  TableText.Content content(String table, int mostRows) throws UnusableInput {
    refuseHuge();
    ReadingOptions withFormats = new ReadingOptions(true, false);
    try (ReadableWorkbook book =
        new ReadableWorkbook(new ByteArrayInputStream(bytes), withFormats)) {
      List<Sheet> sheets = book.getSheets().toList();
      Sheet sheet =
          sheets.stream()
              .filter(s -> s.getName().strip().equalsIgnoreCase(table))
              .findFirst()
              .or(() -> sheets.stream().findFirst())
              .orElseThrow(() -> unread("has no sheet"));
      String where = source + ", sheet `" + sheet.getName() + "`";
      try (Stream<Row> rows = sheet.openStream()) {
        return new TableText.Content(lines(rows, where, mostRows), true, where, "");
      }
    } catch (IOException | ExcelReaderException e) {
      throw unread(NO_SHEETS);
    }
  }

  private static List<TableText.Line> lines(Stream<Row> rows, String where, int mostRows)
      throws UnusableInput {
    List<TableText.Line> lines = new ArrayList<>();
    int width = 0;
    for (Row row : (Iterable<Row>) rows::iterator) {
      List<String> cells = new ArrayList<>();
      for (int c = 0; c < Math.max(row.getCellCount(), width); c++) {
        cells.add(row.hasCell(c) ? text(row.getCell(c), where, row.getRowNum()) : "");
      }
      while (cells.size() > width && cells.get(cells.size() - 1).isBlank()) {
        cells.remove(cells.size() - 1);
      }
      boolean comment = !cells.isEmpty() && cells.get(0).startsWith("#");
      if (!comment && cells.stream().anyMatch(cell -> !cell.isBlank())) {
        width = Math.max(width, lines.isEmpty() ? cells.size() : 0);
        lines.add(new TableText.Line(row.getRowNum(), List.copyOf(cells)));
      }
      if (lines.size() > mostRows + 1) {
        throw UnusableInput.fatal(
            where,
            row.getRowNum(),
            "the table goes on after " + mostRows + " rows, which are the most that are read",
            "split it into several tables");
      }
    }
    return lines;
  }

  private static String text(Cell cell, String where, int row) throws UnusableInput {
    String raw = cell == null || cell.getRawValue() == null ? "" : cell.getRawValue();
    if (cell == null || cell.getType() == CellType.EMPTY) {
      return "";
    }
    if (cell.getType() == CellType.ERROR || ERROR.matcher(raw).matches()) {
      throw UnusableInput.fatal(
          where, row, "cell " + cell.getAddress() + " holds the error " + raw, "mend its formula");
    }
    boolean number = PlainNumber.decimal(raw).isPresent() && cell.getType() != CellType.STRING;
    if (number && isDate(cell.getDataFormatString())) {
      LocalDateTime at = cell.asDate();
      return at.toLocalTime().equals(LocalTime.MIDNIGHT)
          ? at.toLocalDate().toString()
          : at.toString();
    }
    return cell.getType() == CellType.STRING || !number ? cell.getText() : plain(raw);
  }

  /** Days and times are numbers that are shown by a pattern of days, months or hours. */
  private static boolean isDate(String format) {
    String pattern =
        format == null
            ? ""
            : format.toLowerCase(Locale.ROOT).replaceAll("\"[^\"]*\"|\\[[^\\]]*\\]|\\\\.", "");
    return pattern.matches(".*[ydh].*") && !pattern.contains("general");
  }

  /** A number as people write it: 3, not 3.0; 0.1, not 0.10000000000000001. */
  private static String plain(String raw) {
    double value = Double.parseDouble(raw);
    return value == Math.rint(value) && Math.abs(value) < 1e15
        ? String.valueOf((long) value)
        : String.valueOf(value);
  }

  /** A small archive may unpack to more than any memory holds. */
  private void refuseHuge() throws UnusableInput {
    long unpacked = 0;
    byte[] some = new byte[1 << 16];
    try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes))) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        for (int n = zip.read(some); n >= 0; n = zip.read(some)) {
          unpacked += n;
          if (unpacked > MOST_UNPACKED) {
            throw unread("unpacks to more than " + MOST_UNPACKED + " bytes");
          }
        }
      }
    } catch (IOException e) {
      throw unread(NO_SHEETS);
    }
  }

  private UnusableInput unread(String why) {
    return UnusableInput.fatal(source, 0, why, "save it anew as .xlsx, or the sheet as CSV");
  }
}
