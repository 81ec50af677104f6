/**
 * The linear algebra the project needs: arrays of doubles go in, factors and solutions come out,
 * behind one façade over EJML. Begin with {@link org.twinrig.internal.linalg.ThinSvd}.
 */
package org.twinrig.internal.linalg;
