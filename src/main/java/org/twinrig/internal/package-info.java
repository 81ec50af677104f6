/** Argument checks and number texts that every package uses and no user sees. */
package org.twinrig.internal;
