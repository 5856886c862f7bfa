package org.collarbook.custody;

import java.time.Instant;
import java.util.UUID;

import org.collarbook.platform.Ids;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Version;

@Entity
@SuppressWarnings("NullAway.Init")
class Customer implements Persistable<UUID> {

    @Id
    private UUID id;
    @Version
    private @Nullable Integer version;
    private String code;
    private String name;
    private Instant createdAt;

    protected Customer() {}

    static Customer open(String code, String name, Instant at) {
        var customer = new Customer();
        customer.id = Ids.next();
        customer.createdAt = at;
        customer.rename(code, name);
        return customer;
    }

    final void rename(String toCode, String toName) {
        code = toCode;
        name = toName;
    }

    NamedCustomer named() {
        return new NamedCustomer(id, version == null ? 0 : version, code, name);
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
