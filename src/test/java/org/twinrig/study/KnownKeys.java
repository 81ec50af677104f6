package org.twinrig.study;

/** The keys of study.yaml as a message lists them: settings are added without editing tests. */
public final class KnownKeys {
  private KnownKeys() {}

  public static String listed() {
    return String.join(", ", Declaration.keys());
  }
}
