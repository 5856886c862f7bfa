package org.collarbook.portal.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;

import org.collarbook.portal.notices.NoticeFixture.Told;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.Started;
import org.junit.jupiter.api.Test;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Two whole services on one database, as they run: nobody tells them when to send. */
class TwoServicesTests {

    private static final Map<String, String> RUNNING = Map.of("collarbook.recompute.after", "PT0.1S",
            "collarbook.notices.allow-http", "true", "collarbook.notices.allow-addresses", "127.0.0.0/8");

    private static Map<String, String> databaseOf(Started service) {
        var application = service.get(JdbcConnectionDetails.class);
        var owner = service.get(FlywayConnectionDetails.class);
        return Map.of("spring.datasource.url", String.valueOf(application.getJdbcUrl()), "spring.datasource.username",
                String.valueOf(application.getUsername()), "spring.datasource.password",
                String.valueOf(application.getPassword()), "spring.flyway.url", String.valueOf(owner.getJdbcUrl()),
                "spring.flyway.user", String.valueOf(owner.getUsername()), "spring.flyway.password",
                String.valueOf(owner.getPassword()));
    }

    @Test
    void eachNoticeAndEachDueMonthIsToldOnce() {
        try (var one = Started.on(Started.database(), RUNNING);
                var other = Started.on(databaseOf(one), RUNNING);
                var fixture = new NoticeFixture(one.get(Api.class), one.get(Given.class), one.get(JdbcClient.class))) {
            assertThat(other.get(DeliverNotices.class)).isNotSameAs(one.get(DeliverNotices.class));
            var tolds = new ArrayList<Told>();
            for (int i = 0; i < 3; i++) {
                var told = fixture.told(List.of("HOLD", "DUE_SOON"));
                for (int j = 0; j < 5; j++) {
                    var id = fixture.cylinderAt(told.site());
                    fixture.lift(fixture.hold(id));
                }
                tolds.add(told);
            }
            // the hour may have been scanned before the containers came
            one.get(JdbcClient.class)
                    .sql("update notice_scan set scanned_through = '-infinity'").update();
            one.get(TellDueSoon.class).scan();
            other.get(TellDueSoon.class).scan();
            long end = System.nanoTime() + Duration.ofMinutes(3).toNanos();
            while (tolds.stream().anyMatch(told -> told.receiver().received().size() < 15)
                    && System.nanoTime() < end) {
                NoticeFixture.pause(100);
            }
            NoticeFixture.pause(2500);
            tolds.forEach(TwoServicesTests::check);
        }
    }

    private static void check(Told told) {
        var ids = new HashSet<String>();
        var types = new HashMap<String, List<String>>();
        for (var got : told.receiver().received()) {
            assertThat(ids.add(got.header("webhook-id"))).as("once").isTrue();
            NoticeFixture.assertSigned(got, told.secret());
            types.computeIfAbsent(got.container(), fresh -> new ArrayList<>()).add(got.type());
        }
        assertThat(types).hasSize(5);
        assertThat(types.values()).allSatisfy(each -> {
            assertThat(each).hasSize(3).contains("container.due_soon");
            assertThat(each.indexOf("container.held")).isLessThan(each.indexOf("container.released"));
        });
    }
}
