package org.collarbook.portal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.PortalSession;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.TestPropertySource;
import org.springframework.transaction.support.TransactionTemplate;

/** Behind the barriers of the views the lists reach their rows by an index: a condition that leaks is held back by them. */
@RegisterTest
@TestPropertySource(properties = "spring.application.name=collarbook-few-rows")
class PortalIndexTests {

    private final Given given;
    private final JdbcClient jdbc;
    private final PortalSession session;
    private final TransactionTemplate transaction;

    PortalIndexTests(Given given, JdbcClient jdbc, PortalSession session, TransactionTemplate transaction) {
        this.given = given;
        this.jdbc = jdbc;
        this.session = session;
        this.transaction = transaction;
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            select container_id from clock where decisive and changed_by >= '5'::xid8      | requirement_changed
            select container_id from departure where gone_by >= '5'::xid8                  | departure_gone
            select percent from reading where container_id = '%s'                          | reading_once
            select filled_on from latest_fill where container_id = '%s'                    | fill_once
            """)
    void isReachedByIndex(String query, String index) {
        var customer = given.customer();
        transaction.executeWithoutResult(open -> {
            session.confine(CustomerScope.EVERYONE, new CustomerId(customer));
            jdbc.sql("select set_config('enable_seqscan', 'off', true), set_config('enable_bitmapscan', 'off', true)")
                    .query().singleRow();
            var plan = String.join("\n", jdbc.sql("explain " + query.formatted(UUID.randomUUID()))
                    .query(String.class).list());
            assertThat(plan)
                    .containsPattern(index + " [^\\n]*\\n *Index Cond: [^\\n]*(changed_by|gone_by|container_id)");
        });
    }
}
