/**
 * What every package uses and no user sees: checks of arguments, numbers as texts, checksums, files
 * that are opened and replaced with care, and work on several threads. Each class stands alone.
 */
package org.twinrig.internal;
