package org.twinrig.translation;

/** What a translation file lacks. */
final class MissingPart extends Exception {
  private static final long serialVersionUID = 1L;

  MissingPart(String message) {
    super(message);
  }
}
