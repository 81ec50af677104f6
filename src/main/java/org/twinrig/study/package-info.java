/** What the lab declared about a study, and the paired units it yields per kind. */
package org.twinrig.study;
