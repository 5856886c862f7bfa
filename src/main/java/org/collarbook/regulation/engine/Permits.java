package org.collarbook.regulation.engine;

import static org.collarbook.regulation.engine.Tests.verdict;

import java.time.LocalDate;
import java.util.regex.Pattern;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;

/** The conditions that a rule can set on a permit or certificate. */
public final class Permits {

    private static final Pattern CANADIAN = Pattern.compile("^\\s*(TC[\\s-]*)?S[UHR]", Pattern.CASE_INSENSITIVE);

    private Permits() {}

    /** A permit whose number is the stamped one, with its interval, and not expired. */
    public static Test permitInForce(boolean wanted) {
        return new Test(Fact.PERMIT, ReasonCode.MISSING_PERMIT,
                subject -> verdict((holds(subject) && namesTheStamp(subject)) == wanted));
    }

    /**
     * A certificate that is recorded with its number and interval and has not expired, and is the one stamped where one
     * is. One that is recorded in part may be in force: it is asked for, and the cylinder's own table does not stand in
     * for it.
     */
    public static Test certificateInForce(boolean wanted) {
        return new Test(Fact.PERMIT, ReasonCode.MISSING_PERMIT, subject -> holdsInPart(subject)
                ? Verdict.UNKNOWN
                : verdict((holds(subject) && isOfTheStamp(subject)) == wanted));
    }

    /**
     * A cylinder that is made by a certificate bears its number, and another certificate says nothing of it; one that
     * bears none may be named by a Transport Canada certificate, and by no permit of the US.
     */
    private static boolean isOfTheStamp(Subject subject) {
        Specification specification = subject.facts.specification();
        Permit permit = subject.facts.permit();
        boolean bearsNone = specification == null || specification.detail() == null;
        return bearsNone
                ? permit != null && permit.number() != null && CANADIAN.matcher(permit.number()).find()
                : namesTheStamp(subject);
    }

    private static boolean holds(Subject subject) {
        Permit permit = subject.facts.permit();
        LocalDate expires = permit == null ? null : permit.expires();
        return permit != null && permit.number() != null && permit.intervalYears() != null && expires != null
                && !expires.isBefore(subject.asOf);
    }

    private static boolean holdsInPart(Subject subject) {
        Permit permit = subject.facts.permit();
        return permit != null && (permit.number() == null || permit.intervalYears() == null || permit.expires() == null)
                && (permit.expires() == null || !permit.expires().isBefore(subject.asOf));
    }

    private static boolean namesTheStamp(Subject subject) {
        Permit permit = subject.facts.permit();
        Specification specification = subject.facts.specification();
        String stamped = specification == null ? null : specification.detail();
        return permit != null && stamped != null && digits(stamped).equals(digits(permit.number()));
    }

    private static String digits(@Nullable String text) {
        return text == null ? "" : text.replaceAll("\\D", "");
    }
}
