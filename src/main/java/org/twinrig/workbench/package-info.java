/**
 * A study in the browser: requests come in, pages of the study as it stands go out, and what they
 * confirm is written to the study's own files. Nothing is computed here.
 *
 * <p>Begin at {@link org.twinrig.workbench.Workbench}, the only door; it lists every path with what
 * answers it. {@code RequestHandler} takes requests from the HTTP server and lets {@code Access}
 * look at them; the {@code …Pages} answer with templates that take the {@code Snapshot} as it is;
 * {@code StudySession} holds the study, makes a new {@code Snapshot} for every change, and writes
 * through {@code LabFile}, which never overwrites what someone else wrote.
 */
package org.twinrig.workbench;
