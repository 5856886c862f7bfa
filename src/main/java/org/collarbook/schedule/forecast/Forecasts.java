package org.collarbook.schedule.forecast;

import java.time.Duration;
import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Objects;
import java.util.TreeSet;
import java.util.UUID;

import org.collarbook.platform.Turns;
import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.compliance.Requirements;
import org.collarbook.platform.Problem;
import org.collarbook.regulation.RuleBook;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Plays the years ahead of each container through, one after the other: each is read once, by chunks, in one snapshot of
 * the database, and of each only what is counted is kept.
 */
@Component
class Forecasts {

    private static final int CHUNK = 2000;

    private final Turns turns = new Turns(1, Duration.ofSeconds(5),
            "Another forecast is being made: ask again in some seconds.");

    /** The caller waits for the answer, so that more than this many are asked for in parts. */
    private final int most;
    private final FleetRows fleet;
    private final KnownContainers containers;
    private final Requirements requirements;
    private final RuleBook rules;
    private final Clock clock;
    private final TransactionTemplate snapshot;

    Forecasts(@Value("${collarbook.forecast.most:100000}") int most, FleetRows fleet, KnownContainers containers,
            Requirements requirements, RuleBook rules, Clock clock,
            PlatformTransactionManager transactions) {
        this.most = most;
        this.fleet = fleet;
        this.containers = containers;
        this.requirements = requirements;
        this.rules = rules;
        this.clock = clock;
        this.snapshot = new TransactionTemplate(transactions);
        this.snapshot.setIsolationLevel(TransactionDefinition.ISOLATION_REPEATABLE_READ);
        this.snapshot.setReadOnly(true);
    }

    /** One at a time: each reads a fleet whole, and a filler must not wait for it. */
    ForecastAnswer answer(Question question) {
        try (var _ = turns.take()) {
            return Objects.requireNonNull(snapshot.execute(status -> played(question)));
        }
    }

    private ForecastAnswer played(Question question) {
        var first = YearMonth.from(LocalDate.now(clock.withZone(ZoneOffset.UTC)));
        var last = first.plusMonths(12L * question.years() - 1);
        Map<Choice, Tally> tallies = new EnumMap<>(Choice.class);
        question.methods()
                .forEach(choice -> tallies.put(choice, new Tally(first, question.requirement(), question.prices())));
        refuseTooLarge(question);
        var switches = switches(first, last);
        int count = 0;
        for (var ids = next(new ArrayList<>(), question); !ids.isEmpty(); ids = next(ids, question)) {
            for (var known : containers.byIds(ids)) {
                play(known, tallies, switches, last);
                count++;
            }
        }
        return ForecastAnswer.of(first, last, rules.hash(), count, question, tallies);
    }

    private void play(KnownContainer known, Map<Choice, Tally> tallies, NavigableSet<LocalDate> switches,
            YearMonth last) {
        var today = requirements.today(known);
        tallies.forEach((choice, tally) -> new Future(rules, switches, last.atEndOfMonth(), known.facts(), today,
                choice, tally.of(known.container().size().word())).play());
    }

    private List<UUID> next(List<UUID> before, Question question) {
        return fleet.after(before.isEmpty() ? null : before.getLast(), question.fleet(), CHUNK);
    }

    private void refuseTooLarge(Question question) {
        if (fleet.count(question.fleet(), most + 1) > most) {
            throw Problem.of(HttpStatus.UNPROCESSABLE_CONTENT, "FLEET_TOO_LARGE", "The forecast would be of more than "
                    + most + " containers: ask depot by depot, customer by customer, or kind by kind, and add the"
                    + " counts.").with("most", most).asException();
        }
    }

    /** From a day earlier than at any site. */
    private NavigableSet<LocalDate> switches(YearMonth first, YearMonth last) {
        var switches = new TreeSet<LocalDate>();
        for (var day = rules.nextSwitchAfter(first.atDay(1).minusDays(2)); day != null
                && !day.isAfter(last.atEndOfMonth()); day = rules.nextSwitchAfter(day)) {
            switches.add(day);
        }
        return switches;
    }
}
