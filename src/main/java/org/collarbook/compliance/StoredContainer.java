package org.collarbook.compliance;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.List;
import java.util.UUID;

import org.collarbook.regulation.Facts;
import org.jspecify.annotations.Nullable;

/** One container of the register: how a person recognises it, where it stands, and the facts the rules ask for. */
public record StoredContainer(UUID id, Identity identity, @Nullable Place place, Facts facts,
        @Nullable DeclaredFacts declared) {

    /** What tells it from its neighbours in the cage. */
    public record Identity(String kind, String specification, @Nullable String maker, String serial,
            @Nullable YearMonth manufactured, String size, @Nullable String tag, @Nullable String waterCapacity,
            @Nullable BigDecimal tareLb) {}

    /** Where it stands. */
    public record Place(UUID siteId, String siteCode, String siteName, ZoneId zone, @Nullable UUID customerId) {}

    /** Facts that rest on a named person's word instead of a stamp or a ledger. */
    public record DeclaredFacts(String declaredBy, LocalDate declaredOn, List<String> facts) {}
}
