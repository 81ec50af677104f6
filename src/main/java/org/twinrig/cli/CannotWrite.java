package org.twinrig.cli;

/** Thrown when results cannot be put where they should go; says why and what to do. */
final class CannotWrite extends Exception {
  private static final long serialVersionUID = 1L;

  CannotWrite(String message, Throwable cause) {
    super(message, cause);
  }
}
