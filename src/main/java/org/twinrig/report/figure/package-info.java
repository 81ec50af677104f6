/**
 * Drawings. Each is made once as SVG for the page and once as PNG for print, by the same strokes.
 *
 * <p>The plotting library lays out axes and curves; what it does not know is drawn on the same
 * canvas: the frequency ticks readers expect, interval bands, and the mark strip under every
 * frequency axis (full bar reliable, half bar caution, hatching unreliable, gap no data).
 */
package org.twinrig.report.figure;
