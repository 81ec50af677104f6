/**
 * What people see: figures, pages and result files; {@link org.twinrig.report.StagedFolder} moves a
 * finished folder into place as a whole.
 */
package org.twinrig.report;
