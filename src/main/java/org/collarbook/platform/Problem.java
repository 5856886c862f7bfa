package org.collarbook.platform;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

import org.springframework.http.HttpStatus;

/**
 * A refusal as the caller will read it (RFC 9457): a stable code, one sentence that names the input, the rule and the
 * way out, the single inputs at fault, and further members where the caller can act on them.
 */
public record Problem(HttpStatus status, String code, String detail, List<FieldError> errors,
        Map<String, Object> more) {

    public Problem {
        errors = List.copyOf(errors);
        more = Map.copyOf(more);
    }

    public static Problem of(HttpStatus status, String code, String detail) {
        return new Problem(status, code, detail, List.of(), Map.of());
    }

    public static Problem invalid(List<FieldError> errors) {
        return new Problem(HttpStatus.BAD_REQUEST, "INVALID_INPUT",
                "The request has " + errors.size() + (errors.size() == 1 ? " input" : " inputs")
                        + " that cannot be accepted; nothing was stored. See errors.",
                errors, Map.of());
    }

    public static Problem invalid(String pointer, String code, String found, String accepted) {
        return invalid(List.of(new FieldError(pointer, code, found, accepted)));
    }

    /** The same answer whether a thing does not exist or is not the caller's to see. */
    public static Problem notFound(String what) {
        return of(HttpStatus.NOT_FOUND, "NOT_FOUND", "No " + what + " is known by this name or id.");
    }

    public static Problem conflict(String code, String detail) {
        return of(HttpStatus.CONFLICT, code, detail);
    }

    public Problem with(String member, Object value) {
        Map<String, Object> all = new LinkedHashMap<>(more);
        all.put(member, value);
        return new Problem(status, code, detail, errors, all);
    }

    /** Identifies the problem; it names a kind of problem and is not a page. */
    public String type() {
        return "urn:problem-type:collarbook:" + code.toLowerCase(Locale.ROOT).replace('_', '-');
    }

    public ProblemException asException() {
        return new ProblemException(this);
    }

    /** The members in the order a person reads them. */
    public Map<String, Object> body() {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("type", type());
        body.put("title", status.getReasonPhrase());
        body.put("status", status.value());
        body.put("code", code);
        body.put("detail", detail);
        if (!errors.isEmpty()) {
            body.put("errors", errors);
        }
        body.putAll(more);
        return body;
    }
}
