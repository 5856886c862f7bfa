package org.collarbook.portal.notices;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;

import org.apache.hc.client5.http.DnsResolver;

/**
 * Resolves a name once and hands out only addresses that may be connected to; the client connects to these very ones, so
 * a name that answers otherwise a moment later gains nothing. One address that may not be refuses the name.
 */
final class CheckedResolver implements DnsResolver {

    /** The name, or the literal, leads to an address that may not be connected to. */
    static final class AddressRefused extends UnknownHostException {

        AddressRefused() {
            // not which one: who makes a subscription is not told what the names of our own network lead to
            super("The host leads to an address that is not of the public internet.");
        }
    }

    private final DnsResolver resolver;
    private final AllowedAddresses allowed;

    CheckedResolver(DnsResolver resolver, AllowedAddresses allowed) {
        this.resolver = resolver;
        this.allowed = allowed;
    }

    @Override
    public InetAddress[] resolve(String host) throws UnknownHostException {
        var found = resolver.resolve(host);
        if (found == null || found.length == 0) {
            throw new UnknownHostException(host);
        }
        if (!Arrays.stream(found).allMatch(allowed::allow)) {
            throw new AddressRefused();
        }
        return found;
    }

    @Override
    public String resolveCanonicalHostname(String host) {
        return host;
    }
}
