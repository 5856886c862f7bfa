package org.collarbook.portal.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.time.Duration;
import java.util.List;

import org.apache.hc.client5.http.SystemDefaultDnsResolver;
import org.collarbook.portal.notices.NoticeFixture.Told;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Notices that the service itself cannot send: here because its sender is closed and throws. */
@RegisterTest
class FaultyDeliveryTests {

    private final DeliverNotices deliver;
    private final DeliverNotices broken;
    private final SendNotice closed;
    private final TestClock clock;
    private final NoticeFixture fixture;

    FaultyDeliveryTests(Api api, Given given, DeliverNotices deliver, NoticeQueue queue,
            JdbcClient jdbc, TestClock clock) {
        this.deliver = deliver;
        this.closed = new SendNotice(new AllowedAddresses(""), SystemDefaultDnsResolver.INSTANCE,
                Duration.ofSeconds(20));
        this.broken = new DeliverNotices(queue, closed, clock);
        this.clock = clock;
        this.fixture = new NoticeFixture(api, given, jdbc);
    }

    @AfterEach
    void close() {
        broken.destroy();
        fixture.close();
    }

    private List<String> errors(Told told) {
        return told.portal().get(told.path() + "/attempts").expect(200).at("/items").findValuesAsString("error");
    }

    private List<String> attempts(Told told) {
        return told.portal().get(told.path() + "/notices").expect(200).at("/items").findValuesAsString("attempts");
    }

    @Test
    void isAFailedAttemptWithItsRetriesAndWhatWaitsBehindItHasItsTurn() throws IOException {
        var told = fixture.told(List.of("HOLD"));
        fixture.lift(fixture.hold(fixture.cylinderAt(told.site())));
        fixture.hold(fixture.cylinderAt(told.site()));
        closed.destroy();
        NoticeFixture.until(broken, () -> errors(told).size() == 1);
        assertThat(errors(told)).containsExactly("A fault of the service; its log has it.");
        clock.set(clock.instant().plus(Duration.ofSeconds(7)));
        NoticeFixture.until(broken, () -> errors(told).size() == 2);
        // before the third attempt at the first, which comes after minutes
        clock.set(clock.instant().plus(Duration.ofSeconds(20)));
        NoticeFixture.until(broken, () -> errors(told).size() == 3);
        assertThat(attempts(told)).as("the latest first: of another container, and two of one").containsExactly("1",
                "0", "2");

        for (int i = 0; i < 3; i++) {
            int sofar = i + 1;
            clock.set(clock.instant().plus(Duration.ofHours(1)));
            NoticeFixture.until(deliver, () -> told.receiver().received().size() >= sofar);
        }
        assertThat(told.receiver().types()).containsOnlyOnce("container.released");
        var first = told.receiver().received().stream().filter(got -> got.type().equals("container.released"))
                .findFirst().orElseThrow().container();
        assertThat(told.receiver().received().stream().filter(got -> got.container().equals(first))
                .map(Receiver.Received::type)).containsExactly("container.held", "container.released");
    }
}
