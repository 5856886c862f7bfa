package org.collarbook.platform;

import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;

/** The version of a resource as an entity tag: what a change must name in {@code If-Match} (RFC 9110, 13.1.1). */
public record Revision(int version) {

    public String etag() {
        return "\"" + version + "\"";
    }

    /** Refuses with 428 when no version is named and 412 when another one is. */
    public void requireMatch(@Nullable String ifMatch) {
        if (ifMatch == null || ifMatch.isBlank()) {
            throw Problem.of(HttpStatus.PRECONDITION_REQUIRED, "IF_MATCH_REQUIRED",
                    "A change must name the version it was made against: send If-Match with the ETag of the last read.")
                    .asException();
        }
        if (!ifMatch.strip().equals(etag())) {
            throw Problem.of(HttpStatus.PRECONDITION_FAILED, "STALE_VERSION", "If-Match names "
                    + (ifMatch.length() > 80 ? ifMatch.substring(0, 80) + "…" : ifMatch)
                    + " but the present version is " + etag() + ": read it again and repeat the change.").asException();
        }
    }
}
