/**
 * Whether all this holds: the errors a translation makes on units it never saw, by region of the
 * frequency axis, and how often its interval holds them.
 */
package org.twinrig.evidence;
