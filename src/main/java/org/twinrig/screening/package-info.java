/**
 * Which captures not to believe, in one sentence each.
 *
 * <p>A {@link org.twinrig.screening.Verdict} names a capture, what was found, the measured value
 * and the limit. Nothing is deleted: whether a verdict leaves a capture out is the study's setting,
 * and every capture left out is listed.
 */
package org.twinrig.screening;
