package org.collarbook.custody;

import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Collection;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** Each version of a site that answers may rest on, kept in the transaction that makes it. */
@Component
class SiteVersions {

    private final JdbcClient jdbc;
    private final Clock clock;

    SiteVersions(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    @Transactional(propagation = Propagation.MANDATORY)
    void keep(Collection<String> codes) {
        jdbc.sql("""
                insert into site_version (site_id, version, code, name, customer_id, zone, jurisdiction, recorded_at)
                select id, version, code, name, customer_id, zone, jurisdiction, ? from site where code = any (?)
                on conflict do nothing""")
                .params(clock.instant().atOffset(ZoneOffset.UTC), codes.toArray(String[]::new)).update();
    }
}
