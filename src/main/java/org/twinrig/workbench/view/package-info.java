/**
 * What the workbench's templates see: finished texts, nothing to compute. Public only because a
 * template is compiled into a package of its own.
 */
package org.twinrig.workbench.view;
