package org.collarbook.access;

import java.util.Collection;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

import org.jspecify.annotations.Nullable;
import org.springframework.security.oauth2.jwt.Jwt;

/**
 * What a token opens, by three claims: {@value #ROLES}, a list of the words of {@link Role}; for a portal also
 * {@value #CUSTOMER}, the customer's id, and if it is to be confined further {@value #SITES}, a list of sites' ids. A
 * word that is no role is none. Claims that contradict each other, or cannot be read, open nothing: a portal without its
 * customer, staff with one, an empty list of sites.
 */
record TokenGrant(Set<Role> roles, CustomerScope scope) {

    static final String ROLES = "collarbook_roles";
    static final String CUSTOMER = "collarbook_customer";
    static final String SITES = "collarbook_sites";

    private static final TokenGrant NOTHING = new TokenGrant(Set.of(), CustomerScope.EVERYONE);

    static TokenGrant of(Jwt token) {
        var roles = EnumSet.noneOf(Role.class);
        texts(token.getClaim(ROLES)).forEach(word -> Role.of(word).ifPresent(roles::add));
        boolean confined = token.hasClaim(CUSTOMER) || token.hasClaim(SITES);
        if (!roles.contains(Role.PORTAL)) {
            return confined ? NOTHING : new TokenGrant(roles, CustomerScope.EVERYONE);
        }
        return roles.size() > 1
                ? NOTHING
                : scope(token).<TokenGrant>map(scope -> new TokenGrant(roles, scope)).orElse(NOTHING);
    }

    private static Optional<CustomerScope.Only> scope(Jwt token) {
        var customer = id(token.getClaim(CUSTOMER));
        if (!token.hasClaim(SITES)) {
            return customer.map(own -> new CustomerScope.Only(new CustomerId(own), null));
        }
        var sites = new HashSet<UUID>();
        var named = texts(token.getClaim(SITES));
        named.forEach(text -> id(text).ifPresent(sites::add));
        return sites.isEmpty() || sites.size() < named.size()
                ? Optional.empty()
                : customer.map(own -> new CustomerScope.Only(new CustomerId(own), sites));
    }

    private static List<String> texts(@Nullable Object claim) {
        return claim instanceof Collection<?> many ? many.stream().map(String::valueOf).distinct().toList() : List.of();
    }

    private static Optional<UUID> id(@Nullable Object claim) {
        try {
            return claim instanceof String text ? Optional.of(UUID.fromString(text)) : Optional.empty();
        } catch (IllegalArgumentException notAnId) {
            return Optional.empty();
        }
    }
}
