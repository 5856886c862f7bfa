package org.collarbook.holds;

import static org.collarbook.holds.LiftedBy.CLERK;
import static org.collarbook.holds.LiftedBy.COMPETENT_PERSON;
import static org.collarbook.holds.LiftedBy.REQUALIFICATION;
import static org.collarbook.holds.Source.commonPractice;
import static org.collarbook.holds.Source.cylinders;
import static org.collarbook.holds.Source.tareLoss;
import static org.collarbook.holds.Source.testWhateverTheDate;

import java.util.EnumSet;
import java.util.Set;

import org.collarbook.regulation.Citation;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Specification;

/** Why a container is held out of service, where that stands, and what lifts it. */
public enum HoldReason {
    OVERFILLED_OR_DISCHARGED("The relief valve discharged or the container was overfilled: it may not be used until it"
            + " is recertified.", commonPractice("relief discharge from overfilling"), REQUALIFICATION),
    FILLED_NOT_ALLOWED(
            "It was filled although it was not allowed: it stays out of service until it has been looked into.",
            commonPractice("fill that was not allowed"), REQUALIFICATION, COMPETENT_PERSON),
    DENTED("It is dented.", testWhateverTheDate(), REQUALIFICATION),
    CORRODED("It is corroded.", testWhateverTheDate(), REQUALIFICATION),
    LEAKING("It leaks.", testWhateverTheDate(), REQUALIFICATION),
    FIRE_OR_OVERHEATED("It was in a fire or was over-heated.", testWhateverTheDate(), REQUALIFICATION),
    ACCIDENT("It was in an accident.", testWhateverTheDate(), REQUALIFICATION),
    ILLEGIBLE_MARKS("Its marks cannot be read.", cylinders("173.301(b)"), COMPETENT_PERSON),
    COLLAR_OR_FOOT_RING_MISSING("Its collar or foot ring is missing.", commonPractice("collar and foot ring"),
            REQUALIFICATION, COMPETENT_PERSON),
    TARE_LOSS("It has lost 5 % of its tare weight or more.", tareLoss(), REQUALIFICATION),
    VALVE_DEFECT("Its valve or relief valve is defective.", cylinders("173.301(a)(2)"), REQUALIFICATION,
            COMPETENT_PERSON),
    RECALLED("It is recalled.", commonPractice("recall"), COMPETENT_PERSON, CLERK),
    LOST("It is lost.", commonPractice("lost container"), CLERK),
    IDENTITY_DISPUTED("It is not certain which container this is.", commonPractice("disputed identity"), CLERK),
    OWNER_CONSENT_MISSING("The owner has not consented to its being filled.", cylinders("173.301(e)"), CLERK);

    private final String sentence;
    private final Citation citation;
    private final Set<LiftedBy> liftedBy;

    HoldReason(String sentence, Citation citation, LiftedBy first, LiftedBy... more) {
        this.sentence = sentence;
        this.citation = citation;
        this.liftedBy = Set.copyOf(EnumSet.of(first, more));
    }

    public String sentence() {
        return sentence;
    }

    /** A 4E cylinder that was in a fire is out of service for good, NFPA 58 Annex C.3.2.2. */
    public boolean condemns(Specification specification) {
        var second = specification.alsoMarked();
        return this == FIRE_OR_OVERHEATED && (specification.family().equals("4E")
                || second != null && second.family().equals("4E"));
    }

    /** Its basis says whether it was read anywhere. */
    public Citation citation() {
        return citation;
    }

    /** What lifts it from a cylinder, and from any other container that is requalified. */
    public Set<LiftedBy> liftedBy() {
        return liftedBy;
    }

    /**
     * A stationary tank has no periodic requalification that could be passed, so a competent person takes its place:
     * common practice, no source.
     */
    public Set<LiftedBy> liftedBy(ContainerKind kind) {
        if (kind != ContainerKind.STATIONARY_TANK || !liftedBy.contains(REQUALIFICATION)) {
            return liftedBy;
        }
        var instead = EnumSet.copyOf(liftedBy);
        instead.remove(REQUALIFICATION);
        instead.add(COMPETENT_PERSON);
        return Set.copyOf(instead);
    }

    /**
     * Whether passing this work lifts it. What 180.205(d) and 180.209(c) call for is a test: an external visual takes its
     * place only "at the time periodic requalification becomes due", 180.209(g). Elsewhere it is a requalification as any.
     */
    public boolean isLiftedBy(Method method) {
        if (!liftedBy.contains(REQUALIFICATION)) {
            return false;
        }
        return method.isWholeInspection()
                || method == Method.EXTERNAL_VISUAL && !citation.section().startsWith("180.");
    }
}
