package org.collarbook.portal.notices;

/** What a subscription may ask to be told. */
enum NoticeKind {
    DUE_SOON,
    HOLD,
    MOVED,
    CONDEMNED
}
