package org.collarbook.compliance;

import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

import org.collarbook.custody.PastFill;
import org.collarbook.regulation.RuleBook;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** A container as the register knew it at a time, with the rules that the register then held. */
@Component
public class AsKnown {

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
