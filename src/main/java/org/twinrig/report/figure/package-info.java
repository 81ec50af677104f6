/**
 * Figures: what was found goes in, {@link org.twinrig.report.figure.Figure} as SVG and PNG comes
 * out. Begin with {@link org.twinrig.report.figure.TransferFigure}: a figure is a {@code Plot} of
 * two {@code Axis} and layers (lines, areas, dots, words), put on a {@code Sheet} with its title,
 * key, mark strip and small print. The sheet and the plots for a page of any width paint one {@code
 * Drawing}, which {@code SvgText} and {@code PngImage} write.
 *
 * <p>The plotting library draws every layer, on its own linear or logarithmic axes, pinned to the
 * plot's place. A whole figure was tried in it: it fills the outlines of letters, so that an SVG
 * holds no text to select and is twenty times as large; it leaves out ticks at the ends of an axis;
 * and it gives the plot what the measured type leaves over, so that a decade has no length that
 * could be kept. Therefore titles, ticks, keys and the strip are ours.
 */
package org.twinrig.report.figure;
