package org.collarbook.regulation;

/** Non-quenched-and-tempered or quenched-and-tempered steel, as 49 CFR 180.407(c) Note 5 tells them apart. */
public enum Steel {
    NQT,
    QT
}
