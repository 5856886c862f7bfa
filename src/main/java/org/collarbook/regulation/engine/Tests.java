package org.collarbook.regulation.engine;

import java.util.Set;
import java.util.function.Function;
import org.collarbook.regulation.ExtendedPeriod;
import org.collarbook.regulation.Extinguisher;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.Installation;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Purpose;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.ReliefValve;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.Steel;
import org.collarbook.regulation.Use;
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
        }).ofFamily();
    }

    /** No when it is stamped with one of these; where nothing is known of the stamp, this alone does not matter. */
    public static Test statedFamilyNot(Set<String> families) {
        Set<String> set = Set.copyOf(families);
        return new Test(Fact.SPECIFICATION, ReasonCode.MISSING_SPECIFICATION, subject -> {
            Specification specification = subject.facts.specification();
            return verdict(specification == null || !set.contains(specification.family()));
        });
    }

    /** The design standard beside a UN mark is none of these. */
    public static Test designNot(Set<String> designs) {
        Set<String> set = Set.copyOf(designs);
        return new Test(Fact.SPECIFICATION, ReasonCode.MISSING_SPECIFICATION, subject -> {
            Specification specification = subject.facts.specification();
            if (specification == null) {
                return Verdict.UNKNOWN;
            }
            String design = specification.detail();
            return verdict(design == null || !set.contains(design));
        });
    }

    /** A written scheme dates it; what is not recorded does not. */
    public static Test schemeRecorded(boolean wanted) {
        return new Test(Fact.SCHEME_DUE, ReasonCode.MISSING_SCHEME_DUE,
                subject -> verdict((subject.facts.schemeDue() != null) == wanted));
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

    /** An attribute of the mark that is being judged; without a mark there is no star. */
    public static Test star(boolean wanted) {
        return new Test(Fact.REQUALIFICATIONS, ReasonCode.MISSING_REQUALIFICATIONS, subject -> verdict(
                (subject.mark() != null && subject.mark().star()) == wanted));
    }

    /** The European standards of composite cylinders; the steel of a boss or a liner makes none of another kind. */
    private static final Set<String> COMPOSITE = Set.of("EN 14427", "EN 12245");

    /** Steel known, or a design standard other than the composite ones (ISO 11119 and 11515). */
    public static Test composite(boolean wanted) {
        return new Test(Fact.SPECIFICATION, ReasonCode.MISSING_CONSTRUCTION, subject -> {
            Specification specification = subject.facts.specification();
            String detail = specification == null ? null : specification.detail();
            if (specification != null && COMPOSITE.contains(specification.family())) {
                return verdict(wanted);
            }
            if (detail == null || !detail.startsWith("ISO")) {
                return subject.facts.steel() == null ? Verdict.UNKNOWN : verdict(!wanted);
            }
            return verdict((detail.startsWith("ISO 11119") || detail.startsWith("ISO 11515")) == wanted);
        });
    }

    /** Of the mark that is being judged; without a mark there is no method. */
    public static Test markMethod(Set<Method> methods) {
        return new Test(Fact.REQUALIFICATIONS, ReasonCode.MISSING_REQUALIFICATIONS, subject -> verdict(
                subject.mark() != null && subject.mark().method() != null
                        && methods.contains(subject.mark().method())));
    }

    public static Test statedLading(Set<String> ladings) {
        Set<String> set = Set.copyOf(ladings);
        return new Test(Fact.LADING, ReasonCode.MISSING_LADING, subject -> {
            Lading lading = subject.facts.service().lading();
            return verdict(lading != null && set.contains(lading.name()));
        });
    }

    public static Test installation(Installation wanted) {
        return one(Fact.INSTALLATION, ReasonCode.MISSING_INSTALLATION, Facts::installation, Set.of(wanted));
    }

    public static Test reliefValve(ReliefValve wanted) {
        return one(Fact.RELIEF_VALVE, ReasonCode.MISSING_RELIEF_VALVE, Facts::reliefValve, Set.of(wanted));
    }

    public static Test extinguisher(Set<Extinguisher> kinds) {
        return one(Fact.EXTINGUISHER, ReasonCode.MISSING_EXTINGUISHER, Facts::extinguisher, Set.copyOf(kinds));
    }

    public static Test purpose(Set<Purpose> purposes) {
        return one(Fact.MOVE, ReasonCode.MISSING_PURPOSE, facts -> facts.move() == null
                ? null
                : facts.move().purpose(), Set.copyOf(purposes));
    }

    private static <E> Test one(Fact fact, ReasonCode missing, Function<Facts, @Nullable E> of, Set<E> wanted) {
        return new Test(fact, missing, subject -> {
            E value = of.apply(subject.facts);
            return value == null ? Verdict.UNKNOWN : verdict(wanted.contains(value));
        });
    }

    /**
     * A longer period that must be on record: as a fact, or else as the designation stamped on the cylinder. Where nothing
     * is told of it the longer period is not applied.
     */
    public static Test statedExtension(Set<ExtendedPeriod> granted) {
        return new Test(Fact.EXTENDED_PERIOD, ReasonCode.MISSING_PERMIT, subject -> {
            ExtendedPeriod told = subject.facts.extendedPeriod();
            Specification specification = subject.facts.specification();
            boolean stamped = specification != null && ExtendedPeriod.P15Y.name().equals(specification.detail());
            return verdict(told == null
                    ? stamped && granted.contains(ExtendedPeriod.P15Y)
                    : granted.contains(told));
        });
    }
}
