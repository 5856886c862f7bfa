package org.collarbook.dispatch.lists;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

import org.collarbook.compliance.MissingFacts;
import org.collarbook.custody.DisputedPlace;
import org.collarbook.custody.PlaceDisputes;
import org.collarbook.dispatch.lists.PullList.Action;
import org.collarbook.dispatch.lists.PullList.Disputed;
import org.collarbook.dispatch.lists.PullList.NamedSite;
import org.collarbook.dispatch.lists.PullList.Pulled;
import org.collarbook.dispatch.lists.PullList.Stop;
import org.collarbook.dispatch.lists.PullList.ToLookInto;
import org.collarbook.platform.Caution;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Makes the list of a round. */
@Component
class PullLists {

    private final Rounds rounds;
    private final PullRows rows;
    private final PullReasons reasons;
    private final Loads loads;
    private final PlaceDisputes disputes;
    private final PlansInForce plans;

    PullLists(Rounds rounds, PullRows rows, PullReasons reasons, Loads loads, PlaceDisputes disputes,
            PlansInForce plans) {
        this.rounds = rounds;
        this.rows = rows;
        this.reasons = reasons;
        this.loads = loads;
        this.disputes = disputes;
        this.plans = plans;
    }

    PullList ofRoute(String route, @Nullable LocalDate visit) {
        return of(rounds.ofRoute(route, visit));
    }

    PullList answer(PullQuestion question) {
        return of(rounds.of(question));
    }

    private PullList of(Round round) {
        var byCall = rows.of(round.calls()).stream().collect(Collectors.groupingBy(PullRow::call));
        var stops = IntStream.range(0, round.calls().size())
                .mapToObj(i -> stop(round.calls().get(i), byCall.getOrDefault(i + 1, List.of())))
                .filter(stop -> round.everyStop() || !stop.containers().isEmpty() || !stop.undetermined().isEmpty())
                .toList();
        return new PullList(round.asked(), stops, stops.stream().mapToInt(stop -> stop.containers().size()).sum(),
                loads.of(round, swapped(stops)), disputed(round), plans.followed(round.calls()), Caution.TEXT);
    }

    private Stop stop(Call call, List<PullRow> found) {
        var split = found.stream().collect(Collectors.partitioningBy(PullRow::undetermined));
        return new Stop(call.position(), call.route(), NamedSite.of(call.site()), call.visit(), call.next(),
                split.getOrDefault(false, List.of()).stream().map(row -> pulled(row, call)).toList(),
                split.getOrDefault(true, List.of()).stream().map(PullLists::toLookInto).toList());
    }

    private Pulled pulled(PullRow row, Call call) {
        return new Pulled(row.id(), row.action(), row.kind().name(), row.specification(), row.maker(),
                row.serial(), row.manufactured(), row.size(), row.tag(), row.status().name(), row.requirement(),
                row.jurisdiction(), row.due(), row.lastDay(), reasons.why(row, call.until(), call.day()),
                DriverChecks.of(row));
    }

    private static ToLookInto toLookInto(PullRow row) {
        return new ToLookInto(row.id(), row.kind().name(), row.specification(), row.maker(), row.serial(), row.size(),
                row.tag(), MissingFacts.of(row.reasons()));
    }

    private static Map<String, Long> swapped(List<Stop> stops) {
        return stops.stream().flatMap(stop -> stop.containers().stream())
                .filter(pulled -> pulled.action() == Action.SWAP)
                .collect(Collectors.groupingBy(Pulled::size, Collectors.counting()));
    }

    /** Those that one of the sites claims, whether anything is due or not: whoever is there can look. */
    private List<Disputed> disputed(Round round) {
        var disputed = disputes.claimedBy(round.calls().stream().map(call -> call.site().siteId()).toList());
        if (disputed.isEmpty()) {
            return List.of();
        }
        var day = round.calls().stream().map(Call::day).max(Comparator.naturalOrder()).orElseThrow();
        var standing = rows.standing(disputed.stream().map(DisputedPlace::containerId).toList(), day);
        return disputed.stream().map(place -> Disputed.of(place, standing.get(place.containerId()))).toList();
    }
}
