package org.collarbook.lifecycle;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.Map;
import java.util.function.Predicate;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A ledger sent to a running service, by the path of its import. */
public final class SentLedger {

    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final Duration PATIENCE = Duration.ofMinutes(4);

    private SentLedger() {}

    public static String handIn(RunningJar service, String key, String csv) throws Exception {
        var answer = service.post("/api/imports", key, Map.of("Content-Type", "multipart/form-data; boundary=gap"),
                "--gap\r\nContent-Disposition: form-data; name=\"ledger\"; filename=\"ledger.csv\"\r\n"
                        + "Content-Type: text/csv\r\n\r\n" + csv + "\r\n--gap--\r\n");
        return expect(202, answer).headers().firstValue("Location").orElseThrow();
    }

    public static void commit(RunningJar service, String key, String ledger) throws Exception {
        var version = service.get(ledger, key).headers().firstValue("ETag").orElseThrow();
        expect(202,
                service.post(ledger + "/commit", key, Map.of("Content-Type", "application/json", "If-Match", version,
                        "Idempotency-Key", "once"), "{\"refused\":\"SKIP\"}"));
    }

    private static HttpResponse<String> expect(int status, HttpResponse<String> answer) {
        assertThat(answer.statusCode()).as(answer.body()).isEqualTo(status);
        return answer;
    }

    static JsonNode report(RunningJar service, String key, String ledger) throws Exception {
        return JSON.readTree(expect(200, service.get(ledger, key)).body());
    }

    public static boolean isChecked(JsonNode report) {
        return report.path("state").asString().equals("CHECKED");
    }

    public static boolean isCommitted(JsonNode report) {
        return report.path("state").asString().equals("COMMITTED");
    }

    public static JsonNode until(RunningJar service, String key, String ledger, Predicate<JsonNode> wanted)
            throws Exception {
        long end = System.nanoTime() + PATIENCE.toNanos();
        var report = report(service, key, ledger);
        while (!wanted.test(report)) {
            assertThat(System.nanoTime()).as(report.toString()).isLessThan(end);
            Thread.sleep(20);
            report = report(service, key, ledger);
        }
        return report;
    }
}
