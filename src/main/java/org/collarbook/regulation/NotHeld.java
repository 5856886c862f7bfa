package org.collarbook.regulation;

/** What the book knowingly leaves out of a text, and why. */
public record NotHeld(Jurisdiction jurisdiction, String section, String what, String why) {}
