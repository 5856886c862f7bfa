package org.collarbook.portal.notices;

import java.net.InetAddress;

/** A block of addresses as RFC 4632 and RFC 4291 write it, such as {@code 10.0.0.0/8}. */
record AddressRange(InetAddress first, int bits) {

    AddressRange {
        if (bits < 0 || bits > first.getAddress().length * 8) {
            throw new IllegalArgumentException(first.getHostAddress() + " has no prefix of " + bits + " bits");
        }
    }

    static AddressRange parse(String text) {
        int slash = text.indexOf('/');
        if (slash < 0) {
            throw new IllegalArgumentException("A block of addresses is written as 10.0.0.0/8, not as " + text);
        }
        return new AddressRange(InetAddress.ofLiteral(text.substring(0, slash)),
                Integer.parseInt(text.substring(slash + 1)));
    }

    boolean contains(InetAddress address) {
        var mine = first.getAddress();
        var other = address.getAddress();
        if (mine.length != other.length) {
            return false;
        }
        for (int bit = 0; bit < bits; bit++) {
            int mask = 0x80 >> bit % 8;
            if ((mine[bit / 8] & mask) != (other[bit / 8] & mask)) {
                return false;
            }
        }
        return true;
    }
}
