package org.collarbook.platform.web;

import java.time.Duration;
import java.util.Locale;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.util.unit.DataSize;

import jakarta.servlet.http.HttpServletRequest;

/** How large the body of a request may be, and how long it may take to arrive, by what is asked. */
@ConfigurationProperties("collarbook.bodies")
record BodyLimits(DataSize most, DataSize mostOfABatch, DataSize mostOfALedger, Duration time,
        Duration timeOfALedger, int formsAtOnce) {

    boolean isForm(HttpServletRequest request) {
        var type = request.getContentType();
        return type != null && type.toLowerCase(Locale.ROOT).startsWith("multipart/");
    }

    long mostOf(HttpServletRequest request) {
        return switch (kind(request)) {
            case LEDGER -> mostOfALedger.toBytes();
            case BATCH -> mostOfABatch.toBytes();
            case USUAL -> most.toBytes();
        };
    }

    Duration timeOf(HttpServletRequest request) {
        return switch (kind(request)) {
            case LEDGER -> timeOfALedger;
            case BATCH, USUAL -> time;
        };
    }

    private enum Kind {
        USUAL,
        BATCH,
        LEDGER
    }

    private static Kind kind(HttpServletRequest request) {
        var path = request.getRequestURI();
        if (path.startsWith("/api/imports")) {
            return Kind.LEDGER;
        }
        return path.equals("/api/scan-batches") ? Kind.BATCH : Kind.USUAL;
    }
}
