package org.collarbook.portal.notices;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.InetAddress;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** On both sides of each block; the blocks are those of RFC 6890 and its registries, from memory. */
class AllowedAddressesTests {

    private static final AllowedAddresses USUAL = new AllowedAddresses("");

    @ParameterizedTest
    @ValueSource(strings = {"0.0.0.0", "0.255.255.255", "10.0.0.0", "10.255.255.255", "100.64.0.0", "100.100.100.200",
            "100.127.255.255", "127.0.0.1", "127.255.255.255", "169.254.0.1", "169.254.169.254", "172.16.0.0",
            "172.31.255.255", "192.0.0.192", "192.0.2.1", "192.88.99.1", "192.168.0.1", "192.168.255.255", "198.18.0.1",
            "198.19.255.255", "198.51.100.7", "203.0.113.7", "168.63.129.16", "224.0.0.1", "239.255.255.255",
            "240.0.0.1", "255.255.255.255",
            "::", "::1", "::ffff:10.0.0.1", "::10.0.0.1", "64:ff9b::a00:1", "100::1", "fc00::1",
            "fd00:ec2::254", "fe80::1", "fec0::1", "ff02::1", "2001::1", "2001:db8::1", "2002:a00:1::1", "3fff::1",
            "4000::1"})
    void refusesWhatIsNotOfThePublicInternet(String literal) {
        assertThat(USUAL.allow(InetAddress.ofLiteral(literal))).as(literal).isFalse();
    }

    @ParameterizedTest
    @ValueSource(strings = {"1.1.1.1", "9.255.255.255", "11.0.0.0", "100.63.255.255", "100.128.0.0", "126.255.255.255",
            "128.0.0.0", "169.253.255.255", "169.255.0.0", "172.15.255.255", "172.32.0.0", "192.167.255.255",
            "192.169.0.0", "198.17.255.255", "198.20.0.0", "223.255.255.255", "2001:200::1", "2003::1", "2606:4700::1",
            "::ffff:1.1.1.1"})
    void allowsWhatIs(String literal) {
        assertThat(USUAL.allow(InetAddress.ofLiteral(literal))).as(literal).isTrue();
    }

    @Test
    void theConfigurationAddsWhatItNamesAndNoMore() {
        var some = new AllowedAddresses("10.1.0.0/16, fd12::/32");
        assertThat(some.allow(InetAddress.ofLiteral("10.1.255.255"))).isTrue();
        assertThat(some.allow(InetAddress.ofLiteral("10.2.0.0"))).isFalse();
        assertThat(some.allow(InetAddress.ofLiteral("fd12::7"))).isTrue();
        assertThat(some.allow(InetAddress.ofLiteral("fd13::7"))).isFalse();
        assertThatThrownBy(() -> new AllowedAddresses("10.0.0.0")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new AllowedAddresses("10.0.0.0/33")).isInstanceOf(IllegalArgumentException.class);
    }
}
