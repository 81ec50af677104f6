/**
 * Whether all this holds: the errors a translation makes on units it never saw, by region of the
 * frequency axis, how often its interval holds them, and what to measure next.
 */
package org.twinrig.evidence;
