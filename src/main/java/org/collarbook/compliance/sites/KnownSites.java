package org.collarbook.compliance.sites;

import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.UUID;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.custody.Extinguishers;
import org.collarbook.custody.Place;
import org.collarbook.custody.StandingExtinguisher;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.SiteExtinguisher;
import org.collarbook.regulation.SiteFacts;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Reads what stands at a site now, as the rules ask for it, and what they say of it. */
@Component
public class KnownSites {

    /** A site with what stands there; the facts are of these tanks and extinguishers, in this order. */
    record KnownSite(List<KnownContainer> tanks, List<StandingExtinguisher> extinguishers, SiteFacts facts) {}

    private final JdbcClient jdbc;
    private final KnownContainers containers;
    private final Extinguishers extinguishers;
    private final RuleBook rules;

    KnownSites(JdbcClient jdbc, KnownContainers containers, Extinguishers extinguishers, RuleBook rules) {
        this.jdbc = jdbc;
        this.containers = containers;
        this.extinguishers = extinguishers;
        this.rules = rules;
    }

    /** {@code enable} names rules or bases that are off by default. */
    @Transactional(readOnly = true)
    public SiteRequirementsAnswer requirements(Place site, Set<String> enable, LocalDate asOf) {
        var known = read(site, enable);
        return SiteRequirementsAnswer.from(site.siteId(), known, rules.assessSite(known.facts(), asOf), rules);
    }

    private KnownSite read(Place site, Set<String> enable) {
        // a depot holds thousands of cylinders, of which nothing is asked here
        var ids = jdbc.sql("select p.container_id from placement p join container c on c.id = p.container_id"
                + " where p.site_id = ? and c.kind = ?")
                .params(site.siteId(), ContainerKind.STATIONARY_TANK.name()).query(UUID.class).list();
        var tanks = ids.isEmpty() ? List.<KnownContainer>of() : containers.byIds(ids);
        var beside = extinguishers.standingAt(site.siteId());
        return new KnownSite(tanks, beside, new SiteFacts(site.jurisdiction(),
                tanks.stream().map(KnownContainer::facts).toList(), beside.stream().map(KnownSites::facts).toList(),
                enable));
    }

    private static SiteExtinguisher facts(StandingExtinguisher one) {
        var records = one.records().stream().map(done -> Requalification.passed(done.month(), done.method())).toList();
        // where nothing is recorded the history is not known; that nothing was done, nobody said
        return new SiteExtinguisher(one.about().type(), one.about().manufactured(), one.about().ratingBC(),
                records.isEmpty() ? null : records);
    }
}
