package org.collarbook.portal.notices;

import org.jspecify.annotations.Nullable;

/** What a notice tells, as its body writes it. */
enum NoticeType {
    DUE_SOON("container.due_soon", NoticeKind.DUE_SOON),
    HELD("container.held", NoticeKind.HOLD),
    RELEASED("container.released", NoticeKind.HOLD),
    ARRIVED("container.arrived", NoticeKind.MOVED),
    MOVED("container.moved", NoticeKind.MOVED),
    LEFT("container.left", NoticeKind.MOVED),
    CONDEMNED("container.condemned", NoticeKind.CONDEMNED),
    /** The condemnation was a mistake and is corrected. */
    REINSTATED("container.reinstated", NoticeKind.CONDEMNED),
    TEST("endpoint.test", null);

    private final String word;
    private final @Nullable NoticeKind kind;

    NoticeType(String word, @Nullable NoticeKind kind) {
        this.word = word;
        this.kind = kind;
    }

    String word() {
        return word;
    }

    /** What has to be asked for to be told it; a test is asked for by itself. */
    @Nullable
    NoticeKind kind() {
        return kind;
    }
}
