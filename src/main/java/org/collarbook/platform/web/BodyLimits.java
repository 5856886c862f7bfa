package org.collarbook.platform.web;

import java.time.Duration;

import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.util.unit.DataSize;

import jakarta.servlet.http.HttpServletRequest;

/** How large the body of a request may be, how long it may take to arrive, and how many of one caller and of all may at once. */
@ConfigurationProperties("collarbook.bodies")
record BodyLimits(DataSize most, DataSize mostOfABatch, DataSize mostOfALedger, Duration time,
        Duration timeOfALedger, int atOnce, int allAtOnce) {

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
