package org.collarbook.regulation.engine;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import org.collarbook.regulation.Authority;
import org.collarbook.regulation.Condition;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.Facts;
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

    private static <T> Test known(Fact fact, ReasonCode missing, Function<Facts, @Nullable T> read,
            Predicate<T> holds) {
        return new Test(fact, missing, subject -> {
            T value = read.apply(subject.facts);
            return value == null ? Verdict.UNKNOWN : verdict(holds.test(value));
        });
    }

    private static Verdict verdict(boolean holds) {
        return holds ? Verdict.YES : Verdict.NO;
    }

    public static Test family(Set<String> families) {
        return known(Fact.SPECIFICATION, ReasonCode.MISSING_SPECIFICATION, Facts::specification,
                spec -> families.contains(
                        spec.family()));
    }

    public static Test familyNot(Set<String> families) {
        return known(Fact.SPECIFICATION, ReasonCode.MISSING_SPECIFICATION, Facts::specification,
                spec -> !families.contains(
                        spec.family()));
    }

    public static Test authority(Set<Authority> authorities) {
        return known(Fact.SPECIFICATION, ReasonCode.MISSING_SPECIFICATION, Facts::specification, spec -> authorities
                .contains(spec.authority()));
    }

    public static Test lading(Set<String> ladings) {
        return known(Fact.LADING, ReasonCode.MISSING_LADING, facts -> facts.service().lading(),
                lading -> ladings.contains(
                        lading.name()));
    }

    public static Test ladingNot(Set<String> ladings) {
        return known(Fact.LADING, ReasonCode.MISSING_LADING, facts -> facts.service().lading(),
                lading -> !ladings.contains(
                        lading.name()));
    }

    public static Test exclusive(boolean wanted) {
        return known(Fact.EXCLUSIVE, ReasonCode.MISSING_EXCLUSIVE, facts -> facts.service().exclusive(),
                is -> is == wanted);
    }

    public static Test corrosionFree(boolean wanted) {
        return known(Fact.CORROSION_FREE, ReasonCode.MISSING_CORROSION_FREE, facts -> facts.service().corrosionFree(),
                is -> is == wanted);
    }

    public static Test coated(boolean wanted) {
        return known(Fact.COATED, ReasonCode.MISSING_COATED, Facts::coated, is -> is == wanted);
    }

    public static Test lined(boolean wanted) {
        return known(Fact.LINED, ReasonCode.MISSING_LINED, Facts::lined, is -> is == wanted);
    }

    public static Test marksLegible(boolean wanted) {
        return known(Fact.MARKS_LEGIBLE, ReasonCode.MISSING_MARKS_LEGIBLE, Facts::marksLegible, is -> is == wanted);
    }

    public static Test ownerConsent(boolean wanted) {
        return known(Fact.OWNER_CONSENT, ReasonCode.MISSING_OWNER_CONSENT, Facts::ownerConsent, is -> is == wanted);
    }

    public static Test steel(Steel wanted) {
        return known(Fact.STEEL, ReasonCode.MISSING_STEEL, Facts::steel, is -> is == wanted);
    }

    public static Test use(Set<Use> uses) {
        return known(Fact.USE, ReasonCode.MISSING_USE, Facts::use, uses::contains);
    }

    /** A use that must be on record: a rule that only lengthens a period is not applied on an unknown use. */
    public static Test statedUse(Set<Use> uses) {
        return new Test(Fact.USE, ReasonCode.MISSING_USE, subject -> {
            Use use = subject.facts.use();
            return verdict(use != null && uses.contains(use));
        });
    }

    public static Test capacityAtMost(WaterCapacity limit) {
        return capacity(pounds -> pounds.compareTo(limit.toPounds()) <= 0);
    }

    public static Test capacityOver(WaterCapacity limit) {
        return capacity(pounds -> pounds.compareTo(limit.toPounds()) > 0);
    }

    public static Test capacityUnder(WaterCapacity limit) {
        return capacity(pounds -> pounds.compareTo(limit.toPounds()) < 0);
    }

    public static Test capacityAtLeast(WaterCapacity limit) {
        return capacity(pounds -> pounds.compareTo(limit.toPounds()) >= 0);
    }

    private static Test capacity(Predicate<BigDecimal> holds) {
        return known(Fact.WATER_CAPACITY, ReasonCode.MISSING_WATER_CAPACITY, Facts::waterCapacity,
                capacity -> holds.test(
                        capacity.toPounds()));
    }

    public static Test pressureAtLeast(BigDecimal psig) {
        return known(Fact.SERVICE_PRESSURE, ReasonCode.MISSING_SERVICE_PRESSURE, Tests::pressure, is -> is.compareTo(
                psig) >= 0);
    }

    public static Test pressureAtMost(BigDecimal psig) {
        return known(Fact.SERVICE_PRESSURE, ReasonCode.MISSING_SERVICE_PRESSURE, Tests::pressure, is -> is.compareTo(
                psig) <= 0);
    }

    private static final BigDecimal OF_3 = new BigDecimal(1800);
    private static final BigDecimal OF_8 = new BigDecimal(250);

    /** As recorded or as stamped with the specification, the lower; else as 49 CFR 173.301a(b) designates it. */
    static @Nullable BigDecimal pressure(Facts facts) {
        Specification specification = facts.specification();
        BigDecimal recorded = facts.servicePressure();
        Integer stamped = specification == null ? null : specification.servicePressurePsig();
        if (stamped != null) {
            BigDecimal mark = BigDecimal.valueOf(stamped);
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
                (subject.mark != null && subject.mark.star()) == wanted));
    }

    /** Steel known, or a design standard other than the composite ones (ISO 11119, 11515, 14245 excluded). */
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

    /** What a look at the container found; null condition means that nobody looked. */
    private static Test found(Function<Condition, Boolean> finding, boolean wanted) {
        return new Test(Fact.CONDITION, ReasonCode.MISSING_CONDITION, subject -> {
            Condition condition = subject.facts.condition();
            return condition == null ? Verdict.UNKNOWN : verdict(finding.apply(condition) == wanted);
        });
    }

    public static Test damaged(boolean wanted) {
        return found(condition -> condition.damage() != null && !condition.damage().isEmpty(), wanted);
    }

    public static Test overheated(boolean wanted) {
        return found(condition -> Boolean.TRUE.equals(condition.overheated()), wanted);
    }

    public static Test fire(boolean wanted) {
        return found(condition -> Boolean.TRUE.equals(condition.fire()), wanted);
    }

    /** A fire on record; where nobody looked there is none on record, and filling is refused for that alone. */
    public static Test recordedFire(boolean wanted) {
        return new Test(Fact.CONDITION, ReasonCode.MISSING_CONDITION, subject -> {
            Condition condition = subject.facts.condition();
            return verdict((condition != null && Boolean.TRUE.equals(condition.fire())) == wanted);
        });
    }

    public static Test tareLossUnder(BigDecimal percent) {
        return found(condition -> condition.tareLossPercent() == null || condition.tareLossPercent().compareTo(
                percent) < 0, true);
    }

    public static Test condemned(boolean wanted) {
        return new Test(Fact.CONDITION, ReasonCode.MISSING_CONDITION, subject -> verdict(subject.condemned == wanted));
    }

}
