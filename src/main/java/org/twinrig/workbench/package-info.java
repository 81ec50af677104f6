/**
 * How people reach it from a browser: one class per part of the lab session, each turning a request
 * into calls and what was found into a finished view. Nothing is computed here.
 *
 * <p>{@link org.twinrig.workbench.Workbench} is the only door. Inside, {@code RequestHandler} takes
 * requests from the HTTP server and lets {@code Access} look at them; the {@code …Pages} response;
 * {@code StudySession} holds the study, puts a new {@code Snapshot} on top for every change, and
 * writes through {@code LabFile}, which never overwrites what someone else wrote.
 */
package org.twinrig.workbench;
