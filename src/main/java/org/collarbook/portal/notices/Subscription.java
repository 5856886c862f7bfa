package org.collarbook.portal.notices;

import java.time.Instant;
import java.util.Set;
import java.util.UUID;

import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** A subscription as it is shown, never with its secret. {@code waiting}: notices that are not delivered yet. */
@Schema(name = "NoticeSubscription")
record Subscription(UUID id, UUID customerId, String url, Set<NoticeKind> kinds, Lead.@Nullable Asked lead,
        Status status, Instant statusSince, Instant createdAt, long waiting) {

    enum Status {
        ACTIVE,
        PAUSED,
        SWITCHED_OFF
    }

    /** The secret is in this one answer and nowhere else. */
    @Schema(name = "ShownNoticeSubscription")
    record Made(Subscription subscription, String secret) {}

    /** What is asked for. */
    record Wanted(String url, Set<NoticeKind> kinds, @Nullable Lead lead) {}
}
