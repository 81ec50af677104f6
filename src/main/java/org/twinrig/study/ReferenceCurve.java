package org.twinrig.study;

import java.util.Optional;
import org.twinrig.response.Response;
import org.twinrig.response.Smoothing;

/** The curve a lab subtracts from graphs made on a fixture, with its smoothing, if stated. */
public record ReferenceCurve(String file, Optional<Smoothing> smoothing, Response curve) {
  public ReferenceCurve {
    if (file.isBlank()) {
      throw new IllegalArgumentException("a reference curve needs a file");
    }
  }
}
