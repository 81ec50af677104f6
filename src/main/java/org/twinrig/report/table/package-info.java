/**
 * The result files of a study and of a re-expressed catalogue.
 *
 * <p>Text cells that a spreadsheet would take for a formula are made harmless; a value that is not
 * defined is an empty cell.
 */
package org.twinrig.report.table;
