/**
 * Studies whose truth is known: how the demonstration's data come to be, how intervals are proved,
 * and how a lab tries out a plan before it spends a week on seatings.
 *
 * <p>It is physics, not noise added to a curve, because the errors that matter come from physics:
 * the kind of headphone, its source impedance, the leak of its seal, resonances that move. A chain
 * of two-ports leads from the source to the microphone, solved at every frequency in SI units.
 *
 * <h2>Types in order of use</h2>
 *
 * <ul>
 *   <li>{@link org.twinrig.simulation.SimulationPlan} says what study to make, down to the troubles
 *       of the lab; {@code SimulationPlan.standard().withSeed(7).draw()} makes it.
 *   <li>{@link org.twinrig.simulation.SimulatedStudy} holds units, sessions, captures and the back
 *       catalogue as the lab would have them, the truth beside them, and can be written as files.
 *   <li>{@link org.twinrig.simulation.SimulatedKind} holds what units are drawn from; units of one
 *       kind are independent draws, as the statistics assume.
 *   <li>Inside: {@code SimulatedUnit} (a source), {@code SimulatedFixture} (ear load, canal, seal,
 *       concha), {@code FittedUnit} (one on the other), {@code Placement} (the chance of one
 *       seating) and {@code Chain}, which composes {@code TwoPort}, {@code Tube}, {@code Branch}
 *       and {@code Mode}.
 * </ul>
 *
 * <h2>What the truth is</h2>
 *
 * <p>The effect of a leak in decibels is skewed, so the level of the middle seating is not the mean
 * over seatings. A study averages seatings; what it estimates is the expectation over units
 * <em>and</em> good seatings of anchored level on the new fixture minus anchored level on the old
 * one, and that is the truth here. Lost seals, drift and noise are troubles, not truth.
 *
 * <h2>How far to believe it</h2>
 *
 * <p>Orders of magnitude follow the trade: the fixtures differ most below 200 Hz and above 10 kHz,
 * open over-ear units hardly depend on what they play into, in-ears do, a soft head seals worse
 * than a hard plate. No product and no device was measured for it. It serves to prove statistics
 * and to plan; it does not predict what a certain fixture will do.
 *
 * <p>Sources: Beranek and Mellow, Acoustics: Sound Fields, Transducers and Vibration, 2nd ed.;
 * Keefe, J. Acoust. Soc. Am. 75 (1984), 58-62; IEC 60318-4:2010; ITU-T P.57.
 */
package org.twinrig.simulation;
