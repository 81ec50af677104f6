/**
 * How people reach it from a browser: one class per part of the lab book, each turning a request
 * into calls and what was found into a finished view. Nothing is computed here.
 *
 * <p>{@link org.twinrig.workbench.Workbench} is the only door. Inside, {@code Desk} takes requests
 * from the HTTP server and lets {@code Gate} look at them; the {@code …Pages} answer; {@code Book}
 * holds the study, puts a new {@code Leaf} on top for every change, and writes through {@code
 * LabFile}, which never overwrites what someone else wrote.
 */
package org.twinrig.workbench;
