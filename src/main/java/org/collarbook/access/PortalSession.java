package org.collarbook.access;

import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.platform.Problem;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/**
 * Reads as the portal does, to the end of the transaction: under the database's role for portals, which sees one
 * customer's rows through the views of the schema {@code portal} and nothing else. A condition that a statement forgets
 * is missed by nobody.
 */
@Component
public class PortalSession {

    private static final String CONFINE = """
            select set_config('collarbook.customer', ?, true), set_config('collarbook.sites', ?, true),
                set_config('search_path', 'portal', true), set_config('role', 'collarbook_portal', true)""";

    private final JdbcClient jdbc;

    PortalSession(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Another customer does not exist for the caller, exactly as one that nobody has. */
    @Transactional(propagation = Propagation.MANDATORY)
    public void confine(CustomerScope scope, CustomerId customer) {
        var sites = switch (scope) {
            case CustomerScope.Everyone() -> "";
            case CustomerScope.Only(var own, var some) when own.equals(customer) -> some == null
                    ? ""
                    : some.stream().map(UUID::toString).collect(Collectors.joining(",", "{", "}"));
            case CustomerScope.Only(var another, var any) -> throw unknown();
        };
        jdbc.sql(CONFINE).params(customer.toString(), sites).query().singleRow();
        if (!jdbc.sql("select exists (select from customer)").query(Boolean.class).single()) {
            throw unknown();
        }
    }

    private static RuntimeException unknown() {
        return Problem.notFound("customer").asException();
    }
}
