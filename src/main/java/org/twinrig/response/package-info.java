/**
 * What a frequency response is, and how it meets bands.
 *
 * <p>{@link org.twinrig.response.Response} is a curve as measured: levels at rising frequencies,
 * linear in (ln f, dB) between them. {@link org.twinrig.response.Levels} are its integrals over the
 * bands of a grid; a band the curve does not wholly cover has no level: it is missing, never zero
 * and never extrapolated. {@link org.twinrig.response.Anchor} says where a curve's absolute level
 * is pinned.
 */
package org.twinrig.response;
