package org.collarbook.compliance;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;

import org.collarbook.custody.PastFill;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** A container as the register knew it at a time, with the rules that the register then held. */
@Component
public class AsKnown {

    /** The statement for one, run for each of several: what it asks by parameters comes from the row of that one. */
    private static final String OF_EACH = """
            select told.* from unnest(cast(:asked as uuid[]), cast(:days as date[])) as asked (id, day)
            cross join lateral (%s) told order by asked.id""".formatted((Then.BY_DAY + KnownContainers.SELECT)
            .replaceAll(":id\\b", "asked.id").replaceAll(":day\\b", "asked.day")
            // the day has ended everywhere on earth
            .replaceAll(":after\\b", "((asked.day + 1)::timestamp at time zone 'UTC' + interval '12 hours')"));

    private final JdbcClient jdbc;
    private final LoadedRuleBook loaded;
    private final RuleBook rules;
    private final Map<String, RuleBook> books = new ConcurrentHashMap<>();

    AsKnown(JdbcClient jdbc, LoadedRuleBook loaded, RuleBook rules) {
        this.jdbc = jdbc;
        this.loaded = loaded;
        this.rules = rules;
    }

    /** Nothing for a container that was not registered by then. */
    public Optional<KnownContainer> container(UUID id, LocalDate day, Instant knownAt) {
        return jdbc.sql(Then.BY_DAY + KnownContainers.SELECT).param("id", id).param("day", day)
                .param("known", utc(knownAt)).param("sites", utc(knownAt))
                // the day has ended everywhere on earth
                .param("after", day.plusDays(1).atStartOfDay().atOffset(ZoneOffset.ofHours(-12)))
                .query(KnownContainerRow::read).optional();
    }

    /**
     * A container by what is known now of the moment at which it was filled; where it stood, the fill tells. Nothing where
     * that moment is not known.
     */
    public Optional<KnownContainer> atFill(PastFill fill) {
        var moment = fill.filledAt();
        return moment == null
                ? Optional.empty()
                : jdbc.sql(Then.BY_FILL + KnownContainers.SELECT).param("id", fill.containerId())
                        .param("day", fill.filledOn()).param("known", OffsetDateTime.MAX)
                        .param("moment", utc(moment)).param("fill", fill.id()).param("site", fill.siteId())
                        .param("sites", utc(fill.recordedAt())).query(KnownContainerRow::read).optional();
    }

    /** A container, and the day on which it is asked about. */
    public record Asked(UUID container, LocalDate day) {}

    /** A container as it was then known, with its clocks on the day. */
    public record Replayed(KnownContainer container, List<ReplayedClock> clocks) {}

    /**
     * The same answers for many containers, by one run of the same statement for each, within the database. Nothing for
     * those that were not registered by then.
     */
    public List<Replayed> each(List<Asked> asked, Instant knownAt) {
        var dayOf = asked.stream().collect(Collectors.toMap(Asked::container, Asked::day));
        var book = book(knownAt).rules();
        return jdbc.sql(OF_EACH).param("asked", asked.stream().map(Asked::container).toArray(UUID[]::new))
                .param("days", asked.stream().map(one -> one.day().toString()).toArray(String[]::new))
                .param("known", utc(knownAt)).param("sites", utc(knownAt)).query(KnownContainerRow::read).list()
                .stream()
                .map(known -> new Replayed(known, clocks(known, Objects.requireNonNull(dayOf.get(known.id())), book)))
                .toList();
    }

    private static List<ReplayedClock> clocks(KnownContainer known, LocalDate day, RuleBook book) {
        var told = book.assess(known.facts(), day);
        return RequirementRow.on(known.id(), told).stream()
                .map(row -> new ReplayedClock(row.requirement(), row.jurisdiction(), row.standing().name(), row.due(),
                        row.toldBy(told), row.rule(), row.reasons()))
                .toList();
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }

    /** {@code evaluator} is the version that then answered; another one now answers from the same book. */
    public record Book(RuleBook rules, String evaluator) {}

    public Book book(Instant knownAt) {
        var then = loaded.at(knownAt);
        // the same rules with others switched on by name answer otherwise
        var book = then.hash().equals(rules.hash()) && then.engineVersion().equals(rules.engineVersion())
                ? rules
                : books.computeIfAbsent(then.hash() + " " + then.engineVersion(),
                        _ -> RuleBookLoader.ofStored(then.content(), then.engineVersion()));
        return new Book(book, then.engineVersion());
    }
}
