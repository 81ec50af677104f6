/**
 * What people see: figures, pages and result files; {@link org.twinrig.report.ResultFolder} puts a
 * finished folder into its place as a whole.
 */
package org.twinrig.report;
