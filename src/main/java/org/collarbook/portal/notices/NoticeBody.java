package org.collarbook.portal.notices;

import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.UUID;

import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Status;
import org.collarbook.registry.RegisteredContainer;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * What is sent. A field is added without a new version; one that goes or means something else makes one. Of a container
 * that left, neither where it is now nor what is said of it there.
 */
@Schema(name = "Notice")
record NoticeBody(int version, UUID id, String type, Instant occurredAt, @Nullable Identity container,
        @Nullable Where site, @Nullable Where previousSite, @Nullable Status status, String reason,
        @Nullable Requirement requirement, @Nullable YearMonth due, @Nullable LocalDate lastDay) {

    static final int VERSION = 1;

    /** Which container. */
    @Schema(name = "NoticeContainer")
    record Identity(UUID id, String serial, @Nullable String tag, String specification, String size) {

        static Identity of(RegisteredContainer container) {
            var marks = container.marks();
            return new Identity(container.id(), marks.serial().value().toString(),
                    container.tag() == null ? null : container.tag().value(),
                    marks.specification().value().toString(), container.size().word());
        }
    }

    /** A site of the customer who is told. */
    @Schema(name = "NoticeSite")
    record Where(UUID id, String code, String name) {}

    static NoticeBody test(UUID id, Instant at) {
        return new NoticeBody(VERSION, id, NoticeType.TEST.word(), at, null, null, null, null,
                "A test that was asked for: nothing has changed.", null, null, null);
    }
}
