/**
 * Where a translation may be trusted.
 *
 * <p>{@link org.twinrig.reliability.MarkRule} gives every band a {@link
 * org.twinrig.reliability.Mark} with its {@link org.twinrig.reliability.Reason}s, {@link
 * org.twinrig.reliability.Zone} gathers bands into runs a reader can follow, and {@link
 * org.twinrig.reliability.ResonanceWander} finds where notches and peaks sit at other frequencies
 * on the two fixtures, which no correction of level can mend.
 */
package org.twinrig.reliability;
