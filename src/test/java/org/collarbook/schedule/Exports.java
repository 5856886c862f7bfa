package org.collarbook.schedule;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;

import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.collarbook.access.Role;
import org.collarbook.platform.Sha256;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;

/** Exports over HTTP. */
record Exports(Api api, Given given) {

    Answer asked(Map<String, Object> body) {
        return api.as(Role.CLERK).with("Idempotency-Key", UUID.randomUUID().toString())
                .post("/api/schedule-exports", body).expect(202);
    }

    Answer over(String id) {
        var end = Instant.now().plus(Duration.ofMinutes(3));
        while (true) {
            var export = api.as(Role.CLERK).get("/api/schedule-exports/" + id).expect(200);
            if (!List.of("QUEUED", "RUNNING").contains(export.text("/status"))) {
                return export;
            }
            if (Instant.now().isAfter(end)) {
                throw new AssertionError(export.body());
            }
            pause();
        }
    }

    static void pause() {
        try {
            Thread.sleep(50);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Made to its end. */
    Answer done(Map<String, Object> body) {
        var export = over(asked(body).id());
        if (!export.text("/status").equals("DONE")) {
            throw new AssertionError(export.body());
        }
        return export;
    }

    Answer file(Answer export, String name) {
        return api.as(Role.CLERK).get("/api/schedule-exports/" + export.id() + "/files/" + name).expect(200);
    }

    static List<CSVRecord> rows(Answer file) {
        try {
            return CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get()
                    .parse(new StringReader(file.body())).getRecords();
        } catch (IOException e) {
            throw new AssertionError(file.body(), e);
        }
    }

    static List<String> lines(Answer file) {
        var lines = new ArrayList<>(new String(file.bytes(), StandardCharsets.UTF_8).lines().toList());
        lines.removeFirst();
        return lines;
    }

    static String sha256(byte[] bytes) {
        return HexFormat.of().formatHex(Sha256.of(bytes));
    }
}
