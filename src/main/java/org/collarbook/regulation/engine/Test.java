package org.collarbook.regulation.engine;

import org.collarbook.regulation.Fact;
import org.collarbook.regulation.ReasonCode;

/** One condition of a rule over one fact, three-valued: an unknown fact gives neither yes nor no. */
public record Test(Fact fact, ReasonCode missing, Check check) {

    @FunctionalInterface
    interface Check {
        Verdict on(Subject subject);
    }
}
