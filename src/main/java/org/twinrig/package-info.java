/**
 * Re-expresses headphone graphs made on one fixture as if they had been made on another, and says
 * where that must not be done.
 *
 * <p>Data walks one way; every package answers one question and uses only the packages above it:
 *
 * <pre>
 * problem      what was wrong with the lab's files, with place and remedy
 *   band         the frequency axis, as the standards fix it
 *     response     what a frequency response is, and how it meets bands
 *       spectrum     from sound to a frequency response (a side way that intake takes)
 *       capture      what was measured, on what
 *         intake       files to captures, and what a file was taken to be
 *           study        what the lab declared, and the paired units it yields per kind
 *             screening    which captures not to believe, in one sentence each
 *               regression   how the fixtures differ, and how surely
 *                 reliability  where a translation may be trusted
 *                   doubt        what the lab claims and its data contradict
 *                     translation  an old graph re-expressed
 *                       evidence     whether all this holds
 *                         simulation   studies whose truth is known
 *                           analysis     the whole way of a study, once
 *                             report       what people see (figure, html, table)
 *                               scripting    how people reach it from a script or a notebook
 *                                 workbench    how people reach it from a browser
 *                                   cli          how people reach it from a terminal
 * internal     argument checks, linear algebra, number texts: used by all, seen by nobody
 * </pre>
 *
 * <h2>Glossary</h2>
 *
 * <dl>
 *   <dt>fixture
 *   <dd>what a headphone is put on to be measured: a plate or a head with an ear simulator.
 *   <dt>unit
 *   <dd>one specimen of a headphone. The unit, not the capture, is what statistics count.
 *   <dt>kind
 *   <dd>what sort of headphone a unit is (open over-ear, in-ear, …); each kind is analysed apart.
 *   <dt>seating
 *   <dd>one placement of a unit on a fixture, from putting it on to taking it off.
 *   <dt>capture
 *   <dd>the response of one side of one seating, as read from one file.
 *   <dt>band, grid
 *   <dd>a fraction of an octave after IEC 61260-1, and a run of adjacent bands.
 *   <dt>transfer
 *   <dd>level on the new fixture minus level on the old one, in decibels per band.
 *   <dt>graph
 *   <dd>a published response from the back catalogue, made on the old fixture.
 * </dl>
 */
package org.twinrig;
