package org.collarbook.portal.notices;

import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/**
 * The addresses that may be connected to: those of the public internet, by the IANA registries of special-purpose
 * addresses (RFC 6890; the blocks from memory), and what the configuration adds.
 */
@Component
class AllowedAddresses {

    private static final List<AddressRange> NOT_PUBLIC = Stream.of(
            // "this network", private use, shared with carriers, loopback, link-local (with the cloud's metadata)
            "0.0.0.0/8", "10.0.0.0/8", "100.64.0.0/10", "127.0.0.0/8", "169.254.0.0/16", "172.16.0.0/12",
            "192.168.0.0/16",
            // protocol assignments, documentation, 6to4 relays, benchmarks
            "192.0.0.0/24", "192.0.2.0/24", "192.88.99.0/24", "198.18.0.0/15", "198.51.100.0/24", "203.0.113.0/24",
            // a public address that one cloud answers to its own machines
            "168.63.129.16/32",
            // multicast, reserved, broadcast
            "224.0.0.0/4", "240.0.0.0/4",
            // of the global unicast block: protocols with Teredo, documentation, 6to4 with any IPv4 address inside
            "2001::/23", "2001:db8::/32", "2002::/16", "3fff::/20").map(AddressRange::parse).toList();

    /** All else of IPv6 is loopback, link-local, unique-local, multicast, mapped or translated IPv4, or unassigned. */
    private static final AddressRange GLOBAL_UNICAST = AddressRange.parse("2000::/3");

    private final List<AddressRange> added;

    AllowedAddresses(@Value("${collarbook.notices.allow-addresses:}") String added) {
        this.added = Arrays.stream(added.split(",")).filter(one -> !one.isBlank()).map(String::strip)
                .map(AddressRange::parse).toList();
    }

    boolean allow(InetAddress given) {
        var address = unmapped(given);
        if (added.stream().anyMatch(range -> range.contains(address))) {
            return true;
        }
        return NOT_PUBLIC.stream().noneMatch(range -> range.contains(address))
                && (address instanceof Inet4Address || GLOBAL_UNICAST.contains(address));
    }

    /** The IPv4 address in {@code ::ffff:10.0.0.1}. */
    private static InetAddress unmapped(InetAddress address) {
        try {
            return InetAddress.getByAddress(address.getAddress());
        } catch (UnknownHostException wrongLength) {
            throw new IllegalStateException(wrongLength);
        }
    }
}
