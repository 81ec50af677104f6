package org.twinrig.workbench.view;

/**
 * A way to another page.
 *
 * @param text what it says
 * @param path where it leads
 */
public record Link(String text, String path) {}
