package org.collarbook.portal.notices;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.collarbook.compliance.ContainersAssessed;
import org.collarbook.platform.Ids;
import org.collarbook.portal.notices.Change.Told;
import org.collarbook.portal.notices.WriteNotices.Asking;
import org.collarbook.portal.notices.WriteNotices.Written;
import org.jspecify.annotations.Nullable;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;

/**
 * Writes what a change of containers means to the customers who are told, in the transaction that made it: nothing is told
 * that did not come about, and nothing that did is left out. Where nobody is told, it costs one short statement a batch.
 */
@Component
class TellChanges {

    private final SeenContainers seen;
    private final WriteNotices notices;
    private final DescribedContainers containers;
    private final Clock clock;

    TellChanges(SeenContainers seen, WriteNotices notices, DescribedContainers containers, Clock clock) {
        this.seen = seen;
        this.notices = notices;
        this.containers = containers;
        this.clock = clock;
    }

    @EventListener
    void on(ContainersAssessed event) {
        if (!event.containerIds().isEmpty() && seen.areWatched()) {
            tell(seen.takeChanges(event.containerIds().toArray(UUID[]::new)));
        }
    }

    /** What one customer is told of one container. */
    private record Telling(UUID container, Told told) {}

    private void tell(List<Change> changes) {
        var telling = changes.stream()
                .flatMap(change -> change.told().stream().map(told -> new Telling(change.container(), told))).toList();
        if (telling.isEmpty()) {
            return;
        }
        var asking = notices.asking(telling.stream().map(one -> one.told.customer()).collect(Collectors.toSet()));
        var asked = telling.stream().filter(one -> asking.getOrDefault(one.told.customer(), List.of()).stream()
                .anyMatch(subscription -> subscription.asksFor(one.told.type()))).toList();
        if (!asked.isEmpty()) {
            notices.write(written(asked, asking, sites(asked, changes)));
        }
    }

    private List<Written> written(List<Telling> asked, Map<UUID, List<Asking>> asking, Map<UUID, Sites> sites) {
        var described = containers.read(asked.stream().map(Telling::container).collect(Collectors.toSet()));
        var at = clock.instant();
        var written = new ArrayList<Written>();
        for (var one : asked) {
            var told = one.told;
            var description = Objects.requireNonNull(described.get(one.container), "no container " + one.container);
            var own = Objects.requireNonNull(sites.get(told.customer()));
            for (var subscription : Objects.requireNonNull(asking.get(told.customer()))) {
                if (subscription.asksFor(told.type())) {
                    written.add(new Written(subscription.id(), one.container, body(one, description, own, at)));
                }
            }
        }
        return written;
    }

    private static NoticeBody body(Telling one, DescribedContainers.Description description, Sites own, Instant at) {
        var type = one.told.type();
        var previous = own.find(one.told.previousSite());
        // of what left, nothing that is said of it where it is now
        return type == NoticeType.LEFT
                ? new NoticeBody(NoticeBody.VERSION, Ids.next(), type.word(), at, description.identity(), null,
                        previous,
                        null, description.why(type), null, null, null)
                : new NoticeBody(NoticeBody.VERSION, Ids.next(), type.word(), at, description.identity(),
                        own.find(own.now.get(one.container)), previous, description.status(),
                        description.why(type), null, description.due(), description.lastDay());
    }

    /** A customer's sites by id, and at which of them each container stands now. */
    private record Sites(Map<UUID, NoticeBody.Where> byId, Map<UUID, UUID> now) {

        NoticeBody.@Nullable Where find(@Nullable UUID site) {
            return site == null ? null : byId.get(site);
        }
    }

    private Map<UUID, Sites> sites(List<Telling> asked, List<Change> changes) {
        var byContainer = changes.stream().collect(Collectors.toMap(Change::container, Function.identity()));
        Map<UUID, Set<UUID>> ids = new HashMap<>();
        Map<UUID, Map<UUID, UUID>> now = new HashMap<>();
        for (var one : asked) {
            var customer = one.told.customer();
            var after = Objects.requireNonNull(byContainer.get(one.container)).after();
            var of = ids.computeIfAbsent(customer, fresh -> new HashSet<>());
            Stream.ofNullable(one.told.previousSite()).forEach(of::add);
            if (after != null && after.customer().equals(customer)) {
                of.add(after.site());
                now.computeIfAbsent(customer, fresh -> new HashMap<>()).put(one.container, after.site());
            }
        }
        return ids.entrySet().stream().collect(Collectors.toMap(Map.Entry::getKey,
                entry -> new Sites(notices.sites(entry.getValue(), entry.getKey()),
                        now.getOrDefault(entry.getKey(), Map.of()))));
    }
}
