package org.collarbook.custody;

/** Who or what read a gauge. */
public enum ReadingSource {
    READ_BY_PERSON,
    TELEMETRY
}
