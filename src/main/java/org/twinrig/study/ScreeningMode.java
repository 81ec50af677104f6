package org.twinrig.study;

/** What becomes of a capture that screening doubts; named as study.yaml writes it. */
public enum ScreeningMode {
  /** The doubt is reported; the capture is used until the lab excludes it, unless it is a copy. */
  SUGGEST,
  /** The capture is left out, and the report says so. */
  EXCLUDE
}
