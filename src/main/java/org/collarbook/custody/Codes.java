package org.collarbook.custody;

import org.collarbook.platform.Problem;
import org.springframework.dao.DataIntegrityViolationException;

/** The distributor's own short names of customers, sites, products and routes, each in use once. */
public final class Codes {

    private Codes() {}

    public static RuntimeException taken(DataIntegrityViolationException refused, String constraint, String what,
            String code) {
        return String.valueOf(refused.getMostSpecificCause().getMessage()).contains("\"" + constraint + "\"")
                ? Problem.conflict("CODE_TAKEN", "Another " + what + " has the code " + code
                        + ": choose another code, or change that one.").asException()
                : refused;
    }
}
