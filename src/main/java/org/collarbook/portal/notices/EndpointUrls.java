package org.collarbook.portal.notices;

import java.net.InetAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.regex.Pattern;

import org.collarbook.platform.Inputs;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** Reads where notices go. What a name leads to is checked at each connection; here only what is written. */
@Component
class EndpointUrls {

    private static final int LONGEST = 2000;
    private static final int HTTPS = 443;
    private static final int FIRST_UNPRIVILEGED = 1024;
    /**
     * By the URL Standard of the WHATWG (host parsing: "ends in a number checker", "IPv4 parser") such a host is an IPv4
     * address or nothing, whether it is written in octal, in hexadecimal or as one number; a part that begins with a zero
     * is read by some as octal.
     */
    private static final Pattern ENDS_IN_A_NUMBER = Pattern.compile("(?:.*\\.)?(?:\\d+|0[xX]\\p{XDigit}*)\\.?");
    private static final Pattern FOUR_DECIMALS = Pattern.compile("(?:(?:0|[1-9]\\d{0,2})\\.){3}(?:0|[1-9]\\d{0,2})");

    private final boolean http;
    private final AllowedAddresses addresses;

    EndpointUrls(@Value("${collarbook.notices.allow-http:false}") boolean http, AllowedAddresses addresses) {
        this.http = http;
        this.addresses = addresses;
    }

    @Nullable
    URI read(String pointer, @Nullable String given, Inputs wrong) {
        var text = wrong.required(pointer, given, LONGEST);
        if (text == null) {
            return null;
        }
        var url = parse(text);
        var fault = url == null ? "an absolute URL such as https://example.com/notices" : fault(url);
        if (fault != null) {
            wrong.refuse(pointer, "INVALID_URL", text, fault);
            return null;
        }
        return url;
    }

    private static @Nullable URI parse(String text) {
        try {
            var url = new URI(text);
            return url.getHost() == null ? null : url;
        } catch (URISyntaxException notOne) {
            return null;
        }
    }

    /** What would be accepted in its place. */
    private @Nullable String fault(URI url) {
        if (!"https".equalsIgnoreCase(url.getScheme()) && !(http && "http".equalsIgnoreCase(url.getScheme()))) {
            return "an https URL";
        }
        if (url.getRawUserInfo() != null) {
            return "a URL without a user or password: what is sent is signed instead";
        }
        if (url.getRawFragment() != null) {
            return "a URL without a fragment";
        }
        int port = url.getPort();
        // below are the ports of mail, shells and other services that are not spoken to so
        if (port != -1 && port != HTTPS && (port < FIRST_UNPRIVILEGED || port > 0xffff)) {
            return "port 443, or one of 1024 to 65535";
        }
        if (ENDS_IN_A_NUMBER.matcher(url.getHost()).matches() && !FOUR_DECIMALS.matcher(url.getHost()).matches()) {
            return "a host by its name, or by four decimal numbers such as 192.0.2.1";
        }
        var literal = literal(url.getHost());
        return literal == null || addresses.allow(literal) ? null : "a host of the public internet";
    }

    private static @Nullable InetAddress literal(String host) {
        try {
            return InetAddress.ofLiteral(host.startsWith("[") ? host.substring(1, host.length() - 1) : host);
        } catch (IllegalArgumentException aName) {
            return null;
        }
    }
}
