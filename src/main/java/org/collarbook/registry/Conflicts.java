package org.collarbook.registry;

import java.util.Optional;
import java.util.UUID;

import org.collarbook.platform.ProblemException;
import org.collarbook.registry.Registration.SameNaturalKey;
import org.collarbook.registry.Registration.TagInUse;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;

/** Finds which container already bears the marks or the tag that another is to get. */
@Component
class Conflicts {

    private final JdbcClient jdbc;
    private final Absorbed absorbed;
    private final TransactionTemplate apart;

    Conflicts(JdbcClient jdbc, Absorbed absorbed, PlatformTransactionManager transactions) {
        this.jdbc = jdbc;
        this.absorbed = absorbed;
        this.apart = new TransactionTemplate(transactions);
        this.apart.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
    }

    Optional<Registration.Refused> of(NewContainer content, @Nullable UUID except) {
        return sameKey(content.marks().naturalKey(), except).<Registration.Refused>map(
                other -> new SameNaturalKey(other, Difference.between(other.content(), content), closed(other)))
                .or(() -> sameTag(content.tag(), except).map(other -> new TagInUse(other, closed(other))));
    }

    /** The record that counts for it, where it was merged into one. */
    private @Nullable UUID closed(RegisteredContainer other) {
        return absorbed.into(other.id()).orElse(null);
    }

    /** Another request was faster; its container is committed, so a transaction apart sees it. */
    ProblemException lost(DataIntegrityViolationException raced, NewContainer content, UUID id) {
        var words = String.valueOf(raced.getMostSpecificCause().getMessage());
        if (!words.contains("container_natural_key") && !words.contains("container_tag")) {
            throw raced;
        }
        var conflict = apart.execute(status -> of(content, id));
        if (conflict == null || conflict.isEmpty()) {
            throw raced;
        }
        return conflict.get().problem().asException();
    }

    private Optional<RegisteredContainer> sameKey(NaturalKey key, @Nullable UUID except) {
        return jdbc.sql(ContainerRows.SELECT + """
                where mark_scheme = :scheme and specification = :specification and serial = :serial
                  and maker is not distinct from :maker and manufactured is not distinct from :manufactured
                  and id is distinct from :except""")
                .param("scheme", key.scheme().name()).param("specification", key.specification().toString())
                .param("serial", key.serial().value())
                .param("maker", key.maker() == null ? null : key.maker().value())
                .param("manufactured", key.manufactured() == null ? null : key.manufactured().atDay(1))
                .param("except", except).query(ContainerRows::read).optional();
    }

    private Optional<RegisteredContainer> sameTag(@Nullable Tag tag, @Nullable UUID except) {
        return tag == null
                ? Optional.empty()
                : jdbc.sql(ContainerRows.SELECT + "where tag = ? and id is distinct from ?")
                        .params(tag.value(), except).query(ContainerRows::read).optional();
    }
}
