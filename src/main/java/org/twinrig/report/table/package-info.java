/**
 * Tables of results: outcomes go in, files, lines of the manual, rows for pages and typed tables
 * for scripts come out. Begin with {@code TransferResults}: a {@link
 * org.twinrig.report.table.Result} describes a table once, by {@link
 * org.twinrig.report.table.Columns} that name a value, explain it and take it from a row; {@link
 * org.twinrig.report.table.StudyResults} lists those of a study.
 *
 * <p>Text cells that a spreadsheet would take for a formula are made harmless; a value that is not
 * defined is an empty cell. The files are written straight from the columns: a detour by typed
 * tables would load that library in every study, which only scripts need.
 */
package org.twinrig.report.table;
