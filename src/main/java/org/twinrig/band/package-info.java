/**
 * The frequency axis, as the standards fix it: fractional-octave bands after IEC 61260-1:2014 (base
 * ten) and their nominal labels after ISO 266:1997.
 *
 * <p>{@link org.twinrig.band.Band} is one band, {@link org.twinrig.band.BandGrid} a run of adjacent
 * bands, {@link org.twinrig.band.NominalFrequencies} gives the label a reader expects.
 */
package org.twinrig.band;
