/**
 * What was measured, on what: fixtures, units, sessions, and the captures themselves.
 *
 * <p>{@link org.twinrig.capture.CaptureEntry} is a row the lab wrote; {@link
 * org.twinrig.capture.Capture} is the same with the response read from its file.
 */
package org.twinrig.capture;
