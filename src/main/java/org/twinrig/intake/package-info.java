/**
 * Files to captures, and what a file was taken to be.
 *
 * <p>{@link org.twinrig.intake.CaptureFile} is the door: a path goes in, a {@link
 * org.twinrig.intake.Reading} comes out. The reading holds the curve, and says in sentences what
 * the file was taken to be.
 *
 * <h2>How a capture text is understood</h2>
 *
 * <p>Nobody declares the dialect of a capture file, so it has to be found out, and a wrong guess
 * gives wrong numbers that look right. Three rules keep that from happening:
 *
 * <ol>
 *   <li>No line decides alone. The dialect is found on a sample: the first fifty lines of numbers
 *       in a row, or the longest row in a shorter file.
 *   <li>Every line must then obey what was found. The first that does not is refused with its
 *       number, what is wrong, and what would be right; no line of numbers is ever skipped
 *       silently.
 *   <li>Where a file can be read in two ways, it is refused, not guessed at. {@code 20,0,85,3} is
 *       two numbers with decimal commas or four whole ones; frequencies that end below 50 are in
 *       kHz, or the file is not of a headphone; only the lab can say.
 * </ol>
 *
 * <p>The questions are asked in this order:
 *
 * <pre>
 * CaptureFile    can the file be read at all, is it text or sound
 * DecodedText    which characters are its bytes
 * Lines          where lines start and end; is one blank, a comment, numbers, or other text
 * Sample         on which lines the format rests: what parts fields, how many columns there are,
 *                which hold numbers
 * Titles         which line names the columns
 * HeaderWords    what a title means, in several languages
 * TextFormat     point or comma; which column is frequency, which level
 * NumberLines    every line, read
 * Points         rising, falling, repeated: the curve
 * TextCapture    can these numbers be hertz and decibels
 * </pre>
 *
 * <p>A file whose content begins as RIFF is sound, whatever its name. What it holds, an impulse
 * response or the recording of a sweep, is declared by the lab ({@link
 * org.twinrig.spectrum.SoundContent}).
 *
 * <h2>What becomes of doubtful content</h2>
 *
 * <table>
 *   <caption>Used with a note, or refused</caption>
 *   <tr><th>used, with a note</th><th>refused, with line and remedy</th></tr>
 *   <tr><td>frequencies that fall throughout</td><td>frequencies that turn round</td></tr>
 *   <tr><td>a point that stands twice with the same level</td><td>with another level</td></tr>
 *   <tr><td>a point at 0 Hz (left out)</td><td>a frequency below 0 Hz</td></tr>
 *   <tr><td>kHz when the column's title says so</td><td>frequencies that end below 50 with no unit
 *       named</td></tr>
 *   <tr><td>columns that are not needed</td><td>two columns that may both be the level</td></tr>
 *   <tr><td>text after the last number</td><td>text between numbers</td></tr>
 *   <tr><td></td><td>no level, NaN, infinite, beyond 300 dB, pascals or volts</td></tr>
 * </table>
 *
 * <p>Phase is recognised so that it is not taken for a level; it is not used.
 */
package org.twinrig.intake;
