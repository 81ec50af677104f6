package org.twinrig.intake;

/** What a capture file was taken to be: delimited text, or sound. */
public sealed interface CaptureLayout permits Layout, SoundLayout {}
