/**
 * What people see. {@link org.twinrig.report.figure} draws, {@link org.twinrig.report.html} writes
 * pages, {@link org.twinrig.report.table} writes the result files; {@link
 * org.twinrig.report.StagedFolder} moves a finished folder into place as a whole.
 */
package org.twinrig.report;
