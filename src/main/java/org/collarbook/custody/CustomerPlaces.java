package org.collarbook.custody;

import java.util.Collection;
import java.util.List;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.ScopePlaces;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What a portal's key may be confined to. */
@Component
class CustomerPlaces implements ScopePlaces {

    private final JdbcClient jdbc;

    CustomerPlaces(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public boolean isKnown(CustomerId customer) {
        return jdbc.sql("select exists (select from customer where id = ?)").param(customer.value())
                .query(Boolean.class).single();
    }

    @Override
    public List<UUID> foreign(CustomerId customer, Collection<UUID> sites) {
        return jdbc.sql("""
                select asked from unnest(:sites::uuid[]) asked
                where not exists (select from site s where s.id = asked and s.customer_id = :customer)""")
                .param("sites", sites.toArray(UUID[]::new)).param("customer", customer.value()).query(UUID.class)
                .list();
    }
}
