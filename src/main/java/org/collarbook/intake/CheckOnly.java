package org.collarbook.intake;

import java.util.List;

import org.collarbook.custody.Coordinates;
import org.collarbook.platform.BulkCopy;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** The check: remembers for later rows which places this one would have opened, and puts nothing in the register. */
@Component
class CheckOnly implements Sink {

    private final BulkCopy copy;

    CheckOnly(BulkCopy copy) {
        this.copy = copy;
    }

    @Override
    public void take(BatchPlaces places, List<Write> writes, Terms terms) {
        if (!places.newCustomers().isEmpty()) {
            copy.into("ledger_customer (code, name)", places.newCustomers(),
                    customer -> new @Nullable Object[]{customer.code(), customer.name()});
        }
        if (!places.newSites().isEmpty()) {
            copy.into("ledger_site (code, name, kind, customer, latitude, longitude, zone, jurisdiction, address)",
                    places.newSites(),
                    CheckOnly::values);
        }
    }

    @Override
    public boolean isForetelling() {
        return true;
    }

    private static @Nullable Object[] values(KnownSite site) {
        Coordinates at = site.coordinates();
        return new @Nullable Object[]{site.code(), site.name(), site.kind(),
                site.customer() == null ? null : site.customer().code(), at == null ? null : at.latitude(),
                at == null ? null : at.longitude(), site.zone().getId(), site.jurisdiction().code(), site.address()};
    }
}
