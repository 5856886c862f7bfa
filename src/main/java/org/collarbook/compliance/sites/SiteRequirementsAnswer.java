package org.collarbook.compliance.sites;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.RuleBookAnswer;
import org.collarbook.compliance.sites.KnownSites.KnownSite;
import org.collarbook.custody.StandingExtinguisher;
import org.collarbook.platform.Caution;
import org.collarbook.regulation.Citation;
import org.collarbook.regulation.Clock;
import org.collarbook.regulation.Considered;
import org.collarbook.regulation.Extinguisher;
import org.collarbook.regulation.Outcome;
import org.collarbook.regulation.Reason;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.SiteAssessment;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;

/** What is asked of a site; a field that does not apply is absent. */
public record SiteRequirementsAnswer(UUID siteId, LocalDate asOf, SiteAssessment.Outcome outcome, @Nullable String rule,
        @Nullable Integer ratingBCAtLeast, @Nullable Citation citation, List<Reason> reasons, List<SiteTank> tanks,
        List<SiteExtinguisherAnswer> extinguishers, RuleBookAnswer ruleBook, String caution) {

    public record SiteTank(UUID id, @Nullable String waterCapacity) {

        static SiteTank from(KnownContainer tank) {
            var capacity = tank.facts().waterCapacity();
            return new SiteTank(tank.id(), capacity == null ? null : capacity.toString());
        }
    }

    public record SiteExtinguisherAnswer(UUID id, String label, @Nullable Extinguisher type, @Nullable Integer ratingBC,
            Status status, Considered.Answer keptUp, Considered.@Nullable Answer suffices,
            List<SiteClock> requirements, List<Reason> reasons) {

        static SiteExtinguisherAnswer from(StandingExtinguisher one, SiteAssessment.Beside said, LocalDate asOf) {
            var about = one.about();
            return new SiteExtinguisherAnswer(one.id(), about.label(), about.type(), about.ratingBC(), said.status(),
                    said.keptUp(), said.suffices(),
                    said.requirements().stream().map(clock -> SiteClock.from(clock, asOf)).toList(), said.reasons());
        }
    }

    public record SiteClock(Requirement requirement, String outcome, Status status, @Nullable String due,
            @Nullable LocalDate lastDay, @Nullable Boolean overdue, @Nullable List<ReasonCode> missing,
            @Nullable String rule, @Nullable Citation citation) {

        static SiteClock from(Clock clock, LocalDate asOf) {
            var due = clock.outcome() instanceof Outcome.Due is ? is : null;
            return new SiteClock(clock.requirement(), clock.outcome().code(), clock.status(),
                    due == null ? null : due.month().toString(), due == null ? null : due.lastDay(),
                    due == null ? null : due.overdueOn(asOf),
                    clock.outcome() instanceof Outcome.Undetermined(List<Reason> reasons)
                            ? reasons.stream().map(Reason::code).toList()
                            : null,
                    clock.ruleId(), clock.citation());
        }
    }

    static SiteRequirementsAnswer from(UUID site, KnownSite known, SiteAssessment said, RuleBook rules) {
        var extinguishers = new ArrayList<SiteExtinguisherAnswer>();
        for (int i = 0; i < known.extinguishers().size(); i++) {
            extinguishers.add(SiteExtinguisherAnswer.from(known.extinguishers().get(i), said.extinguishers().get(i),
                    said.asOf()));
        }
        return new SiteRequirementsAnswer(site, said.asOf(), said.outcome(), said.ruleId(), said.atLeast(),
                said.citation(), said.reasons(), known.tanks().stream().map(SiteTank::from).toList(), extinguishers,
                RuleBookAnswer.from(rules), Caution.TEXT);
    }
}
