package org.twinrig.workbench;

/** Makes one page, or does one thing. */
@FunctionalInterface
interface Action {
  Answer of(Ask ask) throws Exception;
}
