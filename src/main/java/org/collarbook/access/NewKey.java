package org.collarbook.access;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;

import io.swagger.v3.oas.annotations.media.Schema;

/** A key as it is asked for. */
@Schema(requiredProperties = {"name", "roles"})
record NewKey(@Nullable String name, @Nullable List<@Nullable String> roles, @Nullable UUID customerId,
        @Nullable List<@Nullable UUID> sites, @Nullable Instant expiresAt) {

    private static final String ROLES = "one or more of filler, dispatcher, yard, clerk, administrator;"
            + " or portal alone, with customerId";
    private static final int MOST_SITES = 1000;

    static final Duration MOST = Duration.ofDays(36_525);

    /** What the key will open, or everything that is wrong with the request. */
    KeyGrant check(Instant now, ScopePlaces places) {
        var inputs = new Inputs();
        var named = inputs.required("/name", name, 200);
        var asked = EnumSet.noneOf(Role.class);
        for (var word : roles == null ? List.<@Nullable String>of() : roles) {
            role(word, asked, inputs);
        }
        boolean portal = asked.contains(Role.PORTAL);
        if (asked.isEmpty() && !inputs.areRefused() || portal && asked.size() > 1
                || portal != (customerId != null)) {
            inputs.refuse("/roles", "NOT_ALLOWED", String.valueOf(roles), ROLES);
        }
        checkPlaces(inputs, places);
        if (expiresAt != null && (!expiresAt.isAfter(now) || expiresAt.isAfter(now.plus(MOST)))) {
            inputs.refuse("/expiresAt", "OUT_OF_RANGE", expiresAt.toString(),
                    "a time to come, within the next 100 years");
        }
        inputs.done();
        return new KeyGrant(String.valueOf(named), asked, customerId, sites == null ? null : Set.copyOf(chosen()),
                expiresAt);
    }

    private void checkPlaces(Inputs inputs, ScopePlaces places) {
        if (sites != null && (customerId == null || sites.isEmpty() || sites.size() > MOST_SITES)) {
            inputs.refuse("/sites", "NOT_ALLOWED", String.valueOf(sites),
                    "1 to " + MOST_SITES + " sites of the customer, for a portal's key; absent for all of them");
        } else if (customerId != null) {
            var customer = new CustomerId(customerId);
            if (!places.isKnown(customer)) {
                inputs.refuse("/customerId", "UNKNOWN_CUSTOMER", customer.toString(), "the id of a customer");
            } else if (sites != null) {
                refuseForeign(customer, inputs, places);
            }
        }
    }

    private void refuseForeign(CustomerId customer, Inputs inputs, ScopePlaces places) {
        var foreign = places.foreign(customer, chosen());
        if (!foreign.isEmpty() || chosen().isEmpty()) {
            inputs.refuse("/sites", "UNKNOWN_SITE", foreign.stream().map(UUID::toString)
                    .collect(Collectors.joining(", ")), "ids of sites of this customer");
        }
    }

    private List<UUID> chosen() {
        return sites == null ? List.of() : sites.stream().filter(site -> site != null).distinct().toList();
    }

    private static void role(@Nullable String word, Set<Role> asked, Inputs inputs) {
        Role.of(word).ifPresentOrElse(asked::add, () -> inputs.refuse("/roles", "UNKNOWN_ROLE", word, ROLES));
    }
}
