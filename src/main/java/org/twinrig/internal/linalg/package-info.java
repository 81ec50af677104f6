/** The linear algebra the project needs, behind one façade over EJML. */
package org.twinrig.internal.linalg;
