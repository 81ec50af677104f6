package org.twinrig.workbench;

import java.util.List;

/**
 * What surrounds every page.
 *
 * @param here the page's own path and query
 * @param formToken what forms carry
 * @param disk what others changed in the study's files
 */
public record Frame(
    Part part,
    String title,
    String here,
    Snapshot snapshot,
    String formToken,
    List<LabFile.Change> disk) {

  /** The parts of the workbench, each with the word that leads to it and where it begins. */
  public enum Part {
    CAPTURES("Captures", "./"),
    STUDY("Study", "./study"),
    SETTINGS("Settings", "./settings"),
    ZONES("Zones", "./zones"),
    CATALOGUE("Old graphs", "./catalogue"),
    REPORT("Report", "./report");

    public final String word;
    public final String path;

    Part(String word, String path) {
      this.word = word;
      this.path = path;
    }
  }
}
