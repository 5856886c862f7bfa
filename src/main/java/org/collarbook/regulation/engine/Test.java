package org.collarbook.regulation.engine;

import org.collarbook.regulation.Fact;
import org.collarbook.regulation.ReasonCode;

/**
 * One condition of a rule over one fact, three-valued: an unknown fact gives neither yes nor no. {@code condition} is
 * how the rule words it.
 */
public record Test(Fact fact, ReasonCode missing, Check check, String condition, int stopsAfter,
        boolean byFamilyAlone) {

    @FunctionalInterface
    interface Check {
        Verdict on(Subject subject);
    }

    Test(Fact fact, ReasonCode missing, Check check) {
        this(fact, missing, check, fact.field(), 0, false);
    }

    /** A condition on how long it has been out of service, which begins to fail after so many months. */
    Test after(int months) {
        return new Test(fact, missing, check, condition, months, byFamilyAlone);
    }

    public Test worded(String words) {
        return new Test(fact, missing, check, words, stopsAfter, byFamilyAlone);
    }

    /** A condition that every container of one family answers alike. */
    Test ofFamily() {
        return new Test(fact, missing, check, condition, stopsAfter, true);
    }
}
