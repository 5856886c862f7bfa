package org.collarbook.registry;

import java.time.Instant;
import java.util.UUID;

import org.collarbook.platform.Ids;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;

import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;

/** One container while it is being registered or corrected. */
@Entity
@SuppressWarnings("NullAway.Init")
class Container implements Persistable<UUID> {

    @Id
    private UUID id;
    @Version
    private @Nullable Integer version;
    @Embedded
    private MarkColumns marks;
    @Embedded
    private ParticularColumns particulars;
    private @Nullable String tag;
    private @Nullable UUID declarationId;
    private String[] declared;
    private UUID @Nullable [] declaredIn;
    private @Nullable String declaredJurisdiction;
    private Instant registeredAt;
    private UUID registeredBy;

    protected Container() {}

    static Container register(NewContainer content, Instant at, UUID by) {
        var container = new Container();
        container.id = Ids.next();
        container.registeredAt = at;
        container.registeredBy = by;
        container.correct(content);
        return container;
    }

    final void correct(NewContainer content) {
        marks = MarkColumns.of(content.marks());
        particulars = ParticularColumns.of(content.particulars());
        tag = content.tag() == null ? null : content.tag().value();
        declarationId = content.declaration();
        declared = ContainerRows.words(content.declared());
        declaredIn = ContainerRows.declarations(content);
        declaredJurisdiction = ContainerRows.jurisdiction(content);
    }

    @Override
    public UUID getId() {
        return id;
    }

    @Override
    public boolean isNew() {
        return version == null;
    }
}
