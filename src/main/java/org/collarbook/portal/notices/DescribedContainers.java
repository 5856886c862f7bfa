package org.collarbook.portal.notices;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.compliance.Requirements;
import org.collarbook.portal.PlainReason;
import org.collarbook.registry.Containers;
import org.collarbook.regulation.Assessment;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.Status;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** What a notice says of a container: which one it is, and what the rules say of it today. */
@Component
class DescribedContainers {

    /** Of a record that is closed nothing is assessed. The reasons are in the words that the portal has for them. */
    record Description(NoticeBody.Identity identity, @Nullable UUID site, @Nullable Assessment assessment,
            List<PlainReason> reasons) {

        @Nullable
        Status status() {
            return assessment == null ? null : assessment.status();
        }

        @Nullable
        YearMonth due() {
            return assessment == null ? null : assessment.firstDue();
        }

        @Nullable
        LocalDate lastDay() {
            var due = due();
            return due == null ? null : due.atEndOfMonth();
        }

        String why(NoticeType type) {
            return switch (type) {
                case HELD -> sentence("It is out of service until this is lifted.", Status.ON_HOLD, Status.REJECTED);
                case CONDEMNED -> sentence("It is out of service for good.", Status.CONDEMNED);
                case RELEASED -> "Nothing holds it out of service any more. What is due stays due: see its status.";
                case REINSTATED -> "Its condemnation was a mistake and is corrected. See its status.";
                case ARRIVED -> "It stands at a site of yours now.";
                case MOVED -> "It stands at another of your sites now.";
                case LEFT -> "It no longer stands at a site of yours.";
                case DUE_SOON, TEST -> throw new IllegalArgumentException(type + " has words of its own");
            };
        }

        private String sentence(String lead, Status... of) {
            return lead + reasons.stream().filter(reason -> isWhy(reason.code(), List.of(of))).map(PlainReason::text)
                    .distinct().map(text -> " " + text).collect(Collectors.joining());
        }

        private static boolean isWhy(ReasonCode code, List<Status> of) {
            return of.stream().anyMatch(status -> status.name().equals(code.name()))
                    || of.contains(Status.CONDEMNED) && code == ReasonCode.SERVICE_LIFE_OVER;
        }
    }

    private final KnownContainers known;
    private final Containers containers;
    private final Requirements requirements;
    private final RuleBook rules;

    DescribedContainers(KnownContainers known, Containers containers, Requirements requirements, RuleBook rules) {
        this.known = known;
        this.containers = containers;
        this.requirements = requirements;
        this.rules = rules;
    }

    Map<UUID, Description> read(Collection<UUID> ids) {
        var described = new HashMap<UUID, Description>();
        for (KnownContainer one : known.byIds(ids)) {
            var assessment = rules.assess(one.facts(), requirements.today(one));
            described.put(one.id(), new Description(NoticeBody.Identity.of(one.container()), site(one), assessment,
                    PlainReason.of(assessment, one.facts().holds())));
        }
        ids.stream().filter(id -> !described.containsKey(id)).forEach(closed -> described.put(closed,
                new Description(NoticeBody.Identity.of(containers.require(closed)), null, null, List.of())));
        return described;
    }

    private static @Nullable UUID site(KnownContainer container) {
        return container.where() == null ? null : container.where().siteId();
    }
}
