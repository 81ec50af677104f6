/**
 * How people reach it from a terminal: one class per command, each turning options into calls and
 * results into plain sentences. Nothing is computed here.
 *
 * <p>Exit status: 0 done, 1 the input cannot give a result, 2 wrong usage.
 */
package org.twinrig.cli;
