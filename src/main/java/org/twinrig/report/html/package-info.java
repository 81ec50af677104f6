/**
 * Pages: one self-contained HTML file each, without network and without need of scripts.
 *
 * <p>In go outcomes and drawings, as they are: {@code StudyPage}, {@code CataloguePage}, {@code
 * ComparisonPage} and {@code ExplainPage} hand them to the templates of {@code src/main/jte}, which
 * hold all headings, prose and tables and escape what they show; {@code terminal} holds the texts
 * for the terminal. Begin with the template: it declares the {@link org.twinrig.report.html.Sheet}
 * of each table, and names the rows that its class makes and the few sentences that are worded by
 * rules.
 */
package org.twinrig.report.html;
