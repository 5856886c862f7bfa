package org.collarbook.regulation.engine;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.function.Predicate;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Permit;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.Steel;
import org.collarbook.regulation.Use;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;

/** The conditions that a rule can name. */
public final class Tests {

    private Tests() {}

    static Verdict verdict(boolean holds) {
        return holds ? Verdict.YES : Verdict.NO;
    }

    private static Verdict is(@Nullable Boolean value, boolean wanted) {
        return value == null ? Verdict.UNKNOWN : verdict(value == wanted);
    }

    public static Test family(Set<String> families) {
        return family(families, true);
    }

    public static Test familyNot(Set<String> families) {
        return family(families, false);
    }

    private static Test family(Set<String> families, boolean wanted) {
        Set<String> set = Set.copyOf(families);
        return new Test(Fact.SPECIFICATION, ReasonCode.MISSING_SPECIFICATION, subject -> {
            Specification specification = subject.facts.specification();
            return specification == null ? Verdict.UNKNOWN : verdict(set.contains(specification.family()) == wanted);
        });
    }

    public static Test lading(Set<String> ladings) {
        return lading(ladings, true);
    }

    public static Test ladingNot(Set<String> ladings) {
        return lading(ladings, false);
    }

    private static Test lading(Set<String> ladings, boolean wanted) {
        Set<String> set = Set.copyOf(ladings);
        String only = set.size() == 1 ? set.iterator().next() : null;
        return new Test(Fact.LADING, ReasonCode.MISSING_LADING, subject -> {
            Lading lading = subject.facts.service().lading();
            if (lading == null) {
                return Verdict.UNKNOWN;
            }
            return verdict((only == null ? set.contains(lading.name()) : only.equals(lading.name())) == wanted);
        });
    }

    public static Test exclusive(boolean wanted) {
        return new Test(Fact.EXCLUSIVE, ReasonCode.MISSING_EXCLUSIVE, subject -> is(subject.facts.service().exclusive(),
                wanted));
    }

    public static Test corrosionFree(boolean wanted) {
        return new Test(Fact.CORROSION_FREE, ReasonCode.MISSING_CORROSION_FREE, subject -> is(subject.facts.service()
                .corrosionFree(), wanted));
    }

    public static Test coated(boolean wanted) {
        return new Test(Fact.COATED, ReasonCode.MISSING_COATED, subject -> is(subject.facts.coated(), wanted));
    }

    public static Test lined(boolean wanted) {
        return new Test(Fact.LINED, ReasonCode.MISSING_LINED, subject -> is(subject.facts.lined(), wanted));
    }

    public static Test marksLegible(boolean wanted) {
        return new Test(Fact.MARKS_LEGIBLE, ReasonCode.MISSING_MARKS_LEGIBLE,
                subject -> is(subject.facts.marksLegible(),
                        wanted));
    }

    public static Test ownerConsent(boolean wanted) {
        return new Test(Fact.OWNER_CONSENT, ReasonCode.MISSING_OWNER_CONSENT,
                subject -> is(subject.facts.ownerConsent(),
                        wanted));
    }

    public static Test steel(Steel wanted) {
        return new Test(Fact.STEEL, ReasonCode.MISSING_STEEL, subject -> {
            Steel steel = subject.facts.steel();
            return steel == null ? Verdict.UNKNOWN : verdict(steel == wanted);
        });
    }

    public static Test use(Set<Use> uses) {
        return new Test(Fact.USE, ReasonCode.MISSING_USE, subject -> {
            Use use = subject.facts.use();
            return use == null ? Verdict.UNKNOWN : verdict(uses.contains(use));
        });
    }

    /** A use that must be on record: a rule that only lengthens a period is not applied on an unknown use. */
    public static Test statedUse(Set<Use> uses) {
        return new Test(Fact.USE, ReasonCode.MISSING_USE, subject -> {
            Use use = subject.facts.use();
            return verdict(use != null && uses.contains(use));
        });
    }

    /** No when one of these is what it is said to hold; where the lading is not known, this alone does not matter. */
    public static Test statedLadingNot(Set<String> ladings) {
        Set<String> set = Set.copyOf(ladings);
        return new Test(Fact.LADING, ReasonCode.MISSING_LADING, subject -> {
            Lading lading = subject.facts.service().lading();
            return verdict(lading == null || !set.contains(lading.name()));
        });
    }

    public static Test capacityAtMost(WaterCapacity limit) {
        return capacity(limit, difference -> difference <= 0);
    }

    public static Test capacityOver(WaterCapacity limit) {
        return capacity(limit, difference -> difference > 0);
    }

    public static Test capacityUnder(WaterCapacity limit) {
        return capacity(limit, difference -> difference < 0);
    }

    public static Test capacityAtLeast(WaterCapacity limit) {
        return capacity(limit, difference -> difference >= 0);
    }

    private static Test capacity(WaterCapacity limit, IntPredicate holds) {
        BigDecimal pounds = limit.toPounds();
        return new Test(Fact.WATER_CAPACITY, ReasonCode.MISSING_WATER_CAPACITY, subject -> {
            WaterCapacity capacity = subject.facts.waterCapacity();
            return capacity == null ? Verdict.UNKNOWN : verdict(holds.test(capacity.toPounds().compareTo(pounds)));
        });
    }

    public static Test pressureAtLeast(BigDecimal psig) {
        return pressure(psig, difference -> difference >= 0);
    }

    public static Test pressureAtMost(BigDecimal psig) {
        return pressure(psig, difference -> difference <= 0);
    }

    private static Test pressure(BigDecimal psig, IntPredicate holds) {
        return new Test(Fact.SERVICE_PRESSURE, ReasonCode.MISSING_SERVICE_PRESSURE, subject -> {
            BigDecimal pressure = pressure(subject.facts);
            return pressure == null ? Verdict.UNKNOWN : verdict(holds.test(pressure.compareTo(psig)));
        });
    }

    /** The stamped pressures of low-pressure cylinders, made once. */
    private static final BigDecimal[] STAMPED = IntStream.rangeClosed(0, 500).mapToObj(BigDecimal::valueOf).toArray(
            BigDecimal[]::new);
    private static final BigDecimal OF_3 = new BigDecimal(1800);
    private static final BigDecimal OF_8 = new BigDecimal(250);

    /** As recorded or as stamped with the specification, the lower; else as 49 CFR 173.301a(b) designates it. */
    static @Nullable BigDecimal pressure(Facts facts) {
        Specification specification = facts.specification();
        BigDecimal recorded = facts.servicePressure();
        Integer stamped = specification == null ? null : specification.servicePressurePsig();
        if (stamped != null) {
            BigDecimal mark = stamped >= 0 && stamped < STAMPED.length
                    ? STAMPED[stamped]
                    : BigDecimal.valueOf(stamped);
            return recorded == null ? mark : recorded.min(mark);
        }
        if (recorded != null || specification == null) {
            return recorded;
        }
        return switch (specification.family()) {
            case "3", "3E" -> OF_3;
            case "8" -> OF_8;
            default -> null;
        };
    }

    public static Test madeFrom(YearMonth month) {
        return made(is -> !is.isBefore(month));
    }

    public static Test madeBefore(YearMonth month) {
        return made(is -> is.isBefore(month));
    }

    private static Test made(Predicate<YearMonth> holds) {
        return new Test(Fact.MANUFACTURED, ReasonCode.MISSING_MANUFACTURED, subject -> {
            YearMonth made = subject.manufactured;
            return made == null ? Verdict.UNKNOWN : verdict(holds.test(made));
        });
    }

    /** An attribute of the mark that is being judged; without a mark there is no star. */
    public static Test star(boolean wanted) {
        return new Test(Fact.REQUALIFICATIONS, ReasonCode.MISSING_REQUALIFICATIONS, subject -> verdict(
                (subject.mark() != null && subject.mark().star()) == wanted));
    }

    /** Steel known, or a design standard other than the composite ones (ISO 11119 and 11515). */
    public static Test composite(boolean wanted) {
        return new Test(Fact.SPECIFICATION, ReasonCode.MISSING_CONSTRUCTION, subject -> {
            Specification specification = subject.facts.specification();
            String detail = specification == null ? null : specification.detail();
            if (detail == null || !detail.startsWith("ISO")) {
                return subject.facts.steel() == null ? Verdict.UNKNOWN : verdict(!wanted);
            }
            return verdict((detail.startsWith("ISO 11119") || detail.startsWith("ISO 11515")) == wanted);
        });
    }

    /** A permit whose number is the stamped one, with its interval, and not expired. */
    public static Test permitInForce(boolean wanted) {
        return new Test(Fact.PERMIT, ReasonCode.MISSING_PERMIT, subject -> verdict(permitHolds(subject) == wanted));
    }

    private static boolean permitHolds(Subject subject) {
        Permit permit = subject.facts.permit();
        Specification specification = subject.facts.specification();
        if (permit == null || specification == null || specification.detail() == null
                || permit.intervalYears() == null) {
            return false;
        }
        String number = permit.number();
        LocalDate expires = permit.expires();
        return number != null && digits(number).equals(digits(specification.detail())) && expires != null && !expires
                .isBefore(subject.asOf);
    }

    private static String digits(String text) {
        return text.replaceAll("\\D", "");
    }
}
