package org.twinrig.capture;

/** Which side of a headphone a capture shows; named as the study's files write it. */
public enum Side {
  /** Left. */
  L,
  /** Right. */
  R,
  /** One ear only, or already averaged. */
  M
}
