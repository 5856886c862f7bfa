package org.collarbook.portal;

import java.util.List;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.PortalSession;
import org.collarbook.compliance.Requirements;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.platform.PageSize;
import org.collarbook.regulation.RuleBook;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Reads a customer's containers, as the portal: one index range for the page, two statements for its facts. */
@Component
class PortalContainers {

    private final PortalSession session;
    private final JdbcClient jdbc;
    private final KnownContainers containers;
    private final Requirements requirements;
    private final RuleBook rules;

    PortalContainers(PortalSession session, JdbcClient jdbc, KnownContainers containers, Requirements requirements,
            RuleBook rules) {
        this.session = session;
        this.jdbc = jdbc;
        this.containers = containers;
        this.requirements = requirements;
        this.rules = rules;
    }

    @Transactional(readOnly = true)
    public List<PortalContainer> page(CustomerScope scope, CustomerId customer, @Nullable UUID after, PageSize size) {
        session.confine(scope, customer);
        var ids = jdbc.sql("""
                select container_id from requirement where decisive and container_id > :after
                order by container_id limit :limit""")
                .param("after", after == null ? new UUID(0, 0) : after).param("limit", size.limit()).query(UUID.class)
                .list();
        return containers.byIds(ids).stream().map(container -> PortalContainer.from(container,
                rules.assess(container.facts(), requirements.today(container)))).toList();
    }
}
