/**
 * Where a translation may be trusted.
 *
 * <p>{@link org.twinrig.reliability.MarkRule} gives every band a {@link
 * org.twinrig.reliability.Mark} with its {@link org.twinrig.reliability.Reason}s, {@link
 * org.twinrig.reliability.Zone} gathers bands into runs a reader can follow, and {@link
 * org.twinrig.reliability.ResonanceWander} finds where notches and peaks sit at other frequencies
 * on the two fixtures, which no correction of level can mend. {@link
 * org.twinrig.reliability.FixtureFeatures} finds what all units of a kind share. {@link
 * org.twinrig.reliability.MarkStability} redraws the study from its own units and says how often
 * marks, and the {@link org.twinrig.reliability.ZoneEdge}s of zones, stay as they are.
 */
package org.twinrig.reliability;
