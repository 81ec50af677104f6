/**
 * Whether the program keeps what it promises, tried on simulated studies of known truth. Not part
 * of the program: compiled with its tests, never in the jar.
 *
 * <p>In comes a plan of the simulator, drawn by {@link org.twinrig.proof.Harness} in a {@link
 * org.twinrig.proof.Situation}; a {@link org.twinrig.proof.Proof} runs the program on every study,
 * tallies what comes out against the truth, and describes the columns of its table; {@link
 * org.twinrig.proof.Proofs} is the command that makes the tables of {@code studies/*-proof} anew.
 * Begin at {@link org.twinrig.proof.SealProof}, which is whole in one file. What shall hold
 * whatever the physics is drawn in a {@link org.twinrig.proof.Lab}, and what goes on there is a
 * {@link org.twinrig.proof.Happening}.
 */
package org.twinrig.proof;
