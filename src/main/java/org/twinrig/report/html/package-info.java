/**
 * Pages: one self-contained HTML file each, without network and without need of scripts.
 *
 * <p>Templates only place text; sentences and numbers are composed here, escaped by the template
 * engine.
 */
package org.twinrig.report.html;
