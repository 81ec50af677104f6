/**
 * Pages: one self-contained HTML file each, without network and without need of scripts.
 *
 * <p>In go outcomes and drawings, as they are: {@code StudyPage}, {@code CataloguePage}, {@code
 * ComparisonPage} and {@code ExplainPage} hand them to the templates of {@code src/main/jte}, which
 * hold all headings and prose and escape what they show. Begin with the template: it names the
 * {@link org.twinrig.report.html.Sheet} of each table, declared in the class of its page, and the
 * few sentences that are worded by rules.
 */
package org.twinrig.report.html;
