package org.collarbook.regulation.rulebook;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeSet;
import org.collarbook.regulation.ExtendedPeriod;
import org.collarbook.regulation.Extinguisher;
import org.collarbook.regulation.Fact;
import org.collarbook.regulation.Fittings;
import org.collarbook.regulation.Installation;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Purpose;
import org.collarbook.regulation.ReliefValve;
import org.collarbook.regulation.Steel;
import org.collarbook.regulation.Use;
import org.collarbook.regulation.WaterCapacity;
import org.collarbook.regulation.engine.Appurtenances;
import org.collarbook.regulation.engine.Findings;
import org.collarbook.regulation.engine.Measures;
import org.collarbook.regulation.engine.Permits;
import org.collarbook.regulation.engine.Test;
import org.collarbook.regulation.engine.Tests;

/** Reads the conditions of a rule; the names are those of the facts in a request. */
final class TestsReader {

    private static final String CAPACITY = "a capacity with its unit, such as 125 lb or 3500 gal";

    private TestsReader() {}

    /**
     * In an order of their own, whatever the order in the file: that of the facts, so that missing ones are told alike;
     * what takes a comparison of quantities comes last.
     */
    private static final Comparator<Test> ORDER = Comparator.comparing((Test test) -> test.fact() == Fact.WATER_CAPACITY
            || test.fact() == Fact.SERVICE_PRESSURE).thenComparing(Test::fact);

    static List<Test> read(Fields fields) {
        List<Test> tests = new ArrayList<>();
        for (String key : new TreeSet<>(fields.keys())) {
            if (!RuleReader.LAID_OUT.contains(key)) {
                tests.add(worded(key, fields));
            }
        }
        tests.sort(ORDER);
        return tests;
    }

    /** The conditions of a gate, among which what is stamped is one like the others. */
    static List<Test> required(Fields fields) {
        List<Test> tests = new ArrayList<>();
        for (String key : new TreeSet<>(fields.keys())) {
            tests.add(worded(key, fields));
        }
        tests.sort(ORDER);
        return tests;
    }

    private static Test worded(String key, Fields fields) {
        if (key.equals("family") || key.equals("familyNot") || key.equals("statedFamilyNot")) {
            RuleReader.refuseUnknownFamilies(fields, key);
        }
        return test(key, fields).worded(key + ": " + fields.asMap().get(key));
    }

    private static Test test(String key, Fields fields) {
        return switch (key) {
            case "family" -> Tests.family(fields.set(key));
            case "familyNot" -> Tests.familyNot(fields.set(key));
            case "lading" -> Tests.lading(fields.set(key));
            case "ladingNot" -> Tests.ladingNot(fields.set(key));
            case "statedLadingNot" -> Tests.statedLadingNot(fields.set(key));
            case "exclusive" -> Tests.exclusive(fields.flag(key));
            case "corrosionFree" -> Tests.corrosionFree(fields.flag(key));
            case "coated" -> Tests.coated(fields.flag(key));
            case "lined" -> Tests.lined(fields.flag(key));
            case "marksLegible" -> Tests.marksLegible(fields.flag(key));
            case "ownerConsent" -> Tests.ownerConsent(fields.flag(key));
            case "steel" -> Tests.steel(fields.choice(key, Steel.class));
            case "use" -> Tests.use(fields.choices(key, Use.class));
            case "statedUse" -> Tests.statedUse(fields.choices(key, Use.class));
            case "star" -> Tests.star(fields.flag(key));
            case "composite" -> Tests.composite(fields.flag(key));
            case "certificateInForce" -> Permits.certificateInForce(fields.flag(key));
            case "permitInForce" -> Permits.permitInForce(fields.flag(key));
            default -> stated(key, fields);
        };
    }

    private static Test stated(String key, Fields fields) {
        return switch (key) {
            case "statedFamilyNot" -> Tests.statedFamilyNot(fields.set(key));
            case "designNot" -> Tests.designNot(fields.set(key));
            case "schemeRecorded" -> Tests.schemeRecorded(fields.flag(key));
            case "statedLading" -> Tests.statedLading(fields.set(key));
            case "statedExtension" -> Tests.statedExtension(fields.choices(key, ExtendedPeriod.class));
            case "installation" -> Tests.installation(fields.choice(key, Installation.class));
            case "reliefValve" -> Tests.reliefValve(fields.choice(key, ReliefValve.class));
            case "extinguisher" -> Tests.extinguisher(fields.choices(key, Extinguisher.class));
            case "overfillPrevention" -> Appurtenances.overfillPrevention(fields.flag(key));
            case "overfillPreventionRecorded" -> Appurtenances.overfillPreventionRecorded(fields.flag(key));
            case "statedExemptNot" -> notExempt(fields.child(key));
            case "purpose" -> Tests.purpose(fields.choices(key, Purpose.class));
            case "markMethod" -> Tests.markMethod(fields.choices(key, Method.class));
            default -> measured(key, fields);
        };
    }

    private static Test measured(String key, Fields fields) {
        return switch (key) {
            case "waterCapacityAtMost" -> Measures.capacityAtMost(capacity(key, fields));
            case "waterCapacityOver" -> Measures.capacityOver(capacity(key, fields));
            case "waterCapacityUnder" -> Measures.capacityUnder(capacity(key, fields));
            case "waterCapacityBetween" -> between(fields.child(key));
            case "waterCapacityAtLeast" -> Measures.capacityAtLeast(capacity(key, fields));
            case "statedWaterCapacityAtMost" -> Measures.statedCapacityAtMost(capacity(key, fields));
            case "servicePressureAtLeast" -> Measures.pressureAtLeast(fields.number(key));
            case "servicePressureAtMost" -> Measures.pressureAtMost(fields.number(key));
            case "madeFrom" -> Measures.madeFrom(fields.month(key));
            case "madeBefore" -> Measures.madeBefore(fields.month(key));
            case "markAgeUnder" -> Measures.markAgeUnder(fields.months(key));
            case "markAgeAtLeast" -> Measures.markAgeAtLeast(fields.months(key));
            case "percentFullAtMost" -> Measures.percentFullAtMost(fields.number(key));
            case "outOfServiceUnder" -> outOfService(fields.child(key));
            case "damaged" -> Findings.damaged(fields.flag(key));
            case "overheated" -> Findings.overheated(fields.flag(key));
            case "fire" -> Findings.fire(fields.flag(key));
            case "recordedFire" -> Findings.recordedFire(fields.flag(key));
            case "tareLossUnder" -> Findings.tareLossUnder(fields.number(key));
            case "condemned" -> Findings.condemned(fields.flag(key));
            default -> throw fields.wrong(key,
                    "unknown condition, expected one named as a fact, such as lading, coated or waterCapacityAtMost");
        };
    }

    private static Test outOfService(Fields fields) {
        Test test = Measures.outOfServiceUnder(fields.months("time"), fields.choices("orTestedBy", Method.class));
        fields.done();
        return test;
    }

    private static Test notExempt(Fields fields) {
        Test test = Appurtenances.notExempt(fields.choices("uses", Use.class),
                fields.choices("labels", Fittings.Label.class), fields.month("horizontalMadeBefore"));
        fields.done();
        return test;
    }

    private static Test between(Fields fields) {
        Test test = Measures.capacityBetween(capacity("from", fields), capacity("to", fields));
        fields.done();
        return test;
    }

    private static WaterCapacity capacity(String key, Fields fields) {
        return fields.required(key, CAPACITY, WaterCapacity::parse);
    }
}
