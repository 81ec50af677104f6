package org.twinrig.workbench.view;

/**
 * The page the report is made from.
 *
 * @param frame around it
 * @param place where results go
 * @param last what became of the last one; empty when none was made
 */
public record ReportView(Frame frame, String place, String last) {}
