package org.collarbook.regulation.engine;

enum Verdict {
    YES,
    NO,
    UNKNOWN
}
