package org.twinrig.intake;

/** What stands between two fields of a line. */
enum Separator {
  // In the order in which they are tried: a semicolon never belongs to a number, a comma may.
  SEMICOLON("semicolons", ';'),
  TAB("tabs", '\t'),
  COMMA("commas", ','),
  /** One or more spaces or tabs. */
  SPACES("spaces", ' ');

  final String words;
  private final char mark;

  Separator(String words, char mark) {
    this.words = words;
    this.mark = mark;
  }

  boolean isAt(int c) {
    return this == SPACES ? Lines.isBlank(c) : c == mark;
  }
}
