package org.collarbook.portal;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import java.util.HexFormat;

import org.collarbook.platform.Sha256;
import org.jspecify.annotations.Nullable;
import org.springframework.http.CacheControl;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.context.request.ServletWebRequest;
import org.springframework.web.util.UriComponentsBuilder;
import org.springframework.web.util.UriUtils;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import tools.jackson.databind.json.JsonMapper;

/** An answer that a portal may keep and ask for again: a strong tag, and 304 where nothing changed. */
record Served(HttpServletRequest request, HttpServletResponse response, JsonMapper json) {

    private static final String TOKEN = "Since-Token";

    Served linking(@Nullable String next) {
        response.addHeader(HttpHeaders.LINK, link(null, "first"));
        if (next != null) {
            response.addHeader(HttpHeaders.LINK, link(next, "next"));
        }
        return this;
    }

    /** Beside the answer, not in it: it is another each time, and the answer often the same. */
    Served since(@Nullable String token) {
        if (token != null) {
            response.setHeader(TOKEN, token);
        }
        return this;
    }

    /** RFC 8288, relative to the address asked for. */
    private String link(@Nullable String cursor, String relation) {
        var uri = UriComponentsBuilder.fromPath(request.getRequestURI());
        request.getParameterMap().forEach((name, values) -> {
            if (!name.equals("cursor")) {
                Arrays.stream(values).forEach(value -> uri.queryParam(encoded(name), encoded(value)));
            }
        });
        if (cursor != null) {
            uri.queryParam("cursor", encoded(cursor));
        }
        return "<" + uri.build(true).toUriString() + ">; rel=\"" + relation + "\"";
    }

    /** All but what is unreserved: a plus, which a query may have, is read as a space. */
    private static String encoded(String text) {
        return UriUtils.encode(text, StandardCharsets.UTF_8);
    }

    /** Null: told as not changed. {@code If-None-Match} is asked before {@code If-Modified-Since} (RFC 9110, 13.2.2). */
    @Nullable
    ResponseEntity<byte[]> body(Object content, @Nullable Instant lastModified) {
        var body = json.writeValueAsBytes(content);
        // a strong tag: equal tags are equal bytes
        var etag = "\"" + HexFormat.of().formatHex(Sha256.of(body), 0, 16) + "\"";
        // private: a shared cache must not hold one customer's list for another
        response.setHeader(HttpHeaders.CACHE_CONTROL, CacheControl.noCache().cachePrivate().getHeaderValue());
        if ("*".equals(request.getHeader(HttpHeaders.IF_NONE_MATCH))) {
            // RFC 9110, 13.1.2: there is something
            response.setHeader(HttpHeaders.ETAG, etag);
            response.setStatus(HttpStatus.NOT_MODIFIED.value());
            return null;
        }
        if (new ServletWebRequest(request, response).checkNotModified(etag,
                lastModified == null ? -1 : lastModified.toEpochMilli())) {
            return null;
        }
        return ResponseEntity.ok().contentType(MediaType.APPLICATION_JSON).body(body);
    }
}
