package org.collarbook.registry;

import java.util.regex.Pattern;

import org.collarbook.regulation.ParseResult;

/** The marked service pressure in psig, where it is told apart from the specification's own number. */
public record ServicePressure(int psig) {

    static final String EXPECTED = "whole pounds per square inch from 1 to 20000, such as 250 or 250 psig";
    private static final Pattern SHAPE = Pattern.compile("(\\d{1,5})\\s*(?:psig?|PSIG?)?");

    public ServicePressure {
        if (psig < 1 || psig > 20_000) {
            throw new IllegalArgumentException("service pressure " + psig + ": expected " + EXPECTED);
        }
    }

    public static ParseResult<ServicePressure> tryParse(String text) {
        var stripped = text.strip();
        var shape = SHAPE.matcher(stripped);
        if (!shape.matches()) {
            return ParseResult.rejectedAt(stripped, shape.lookingAt() ? shape.end() : 0, EXPECTED);
        }
        int psig = Integer.parseInt(shape.group(1));
        return psig < 1 || psig > 20_000
                ? ParseResult.rejectedAt(stripped, 0, EXPECTED)
                : ParseResult.parsed(new ServicePressure(psig));
    }

    public static ServicePressure parse(String text) {
        return tryParse(text).orElseThrow("service pressure", Letters.shown(text));
    }

    @Override
    public String toString() {
        return psig + " psig";
    }
}
