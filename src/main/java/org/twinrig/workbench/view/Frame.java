package org.twinrig.workbench.view;

import java.util.List;
import java.util.Optional;

/**
 * What surrounds every page.
 *
 * @param title of the page
 * @param revision how things stood when the page was made
 * @param sign what forms of the session carry
 * @param undo what the next undo takes back
 * @param disk what others changed in the study's files
 * @param here the page's own path and query
 * @param part which part of the book the page belongs to
 */
public record Frame(
    String title,
    String study,
    long revision,
    String sign,
    Optional<String> undo,
    List<DiskChange> disk,
    String here,
    Part part) {

  public Frame {
    disk = List.copyOf(disk);
  }

  /** The parts of the book. */
  public enum Part {
    /** Units and their captures. */
    CAPTURES("Captures", "./"),
    /** The study. */
    STUDY("Study", "./study"),
    /** What the study is told. */
    SETTINGS("Settings", "./settings"),
    /** Zones and their reasons. */
    ZONES("Zones", "./zones"),
    /** Old graphs. */
    CATALOGUE("Old graphs", "./catalogue"),
    /** The written report. */
    REPORT("Report", "./report");

    private final String word;
    private final String path;

    Part(String word, String path) {
      this.word = word;
      this.path = path;
    }

    /** The part's name: a word or two. */
    public String word() {
      return word;
    }

    /** Where it begins. */
    public String path() {
      return path;
    }
  }

  /**
   * A file that others changed.
   *
   * @param file its name
   * @param lines what is different
   */
  public record DiskChange(String file, List<String> lines) {
    public DiskChange {
      lines = List.copyOf(lines);
    }
  }
}
