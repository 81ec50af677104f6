/**
 * An old graph re-expressed as if it had been measured on the new fixture.
 *
 * <p>{@link org.twinrig.translation.TransferFunction} holds a kind's estimates together with their
 * marks and is the only thing that can be applied: there is no way to a translated level without
 * its interval and its mark. {@link org.twinrig.translation.Translator} applies it to one graph;
 * {@link org.twinrig.translation.Decision} says what the lab should do with the result.
 */
package org.twinrig.translation;
