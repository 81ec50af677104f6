package org.twinrig.cli;

import picocli.CommandLine;

/** The program's version, as its jar states it. */
final class Version implements CommandLine.IVersionProvider {

  @Override
  public String[] getVersion() {
    return new String[] {"twinrig " + text()};
  }

  /** The version alone. */
  static String text() {
    String version = Version.class.getPackage().getImplementationVersion();
    return version == null ? "(not from a jar)" : version;
  }
}
