package org.collarbook.regulation;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Turns a row of golden/world.tsv, which is written for people, into facts; all else is known and in order. */
final class WorldFacts {

    private static final Pattern DESIGN = Pattern.compile("EN \\d+");

    private final Map<String, String> row;
    private final String stamped;
    private final String method;

    WorldFacts(Map<String, String> row) {
        this.row = row;
        this.stamped = row.get("spec");
        this.method = row.get("method");
    }

    Facts facts() {
        FactsBuilder facts = Facts.builder().jurisdiction(new Jurisdiction(row.get("jurisdiction"))).kind(kind())
                .specification(specification());
        facts.manufactured(row.get("manufacture").length() == 4 ? null : YearMonth.parse(row.get("manufacture")));
        facts.service(new Service(new Lading(lading()), true, true)).waterCapacity(capacity());
        facts.marksLegible(true).ownerConsent(true).condition(Condition.SOUND).holds(List.of());
        facts.use(row.get("service").contains("balloon")
                ? Use.HOT_AIR_BALLOON
                : row.get("spec").contains("truck")
                        ? Use.INDUSTRIAL_TRUCK
                        : Use.FUEL);
        facts.steel(stamped.contains("teel") || row.get("id").equals("UK-06") ? Steel.NQT : null);
        facts.reliefValve(stamped.contains("internal") ? ReliefValve.INTERNAL : null);
        facts.installation(stamped.contains("underground") ? Installation.UNDERGROUND : Installation.ABOVEGROUND);
        facts.extendedPeriod(extended()).schemeDue(method.equals("written scheme date")
                ? YearMonth.parse("2023-03")
                : null);
        facts.permit(stamped.contains("SU 10054") ? new Permit("SU 10054", LocalDate.of(2022, 1, 31), 10) : null);
        return facts.requalifications(history()).enable(switch (row.get("grade")) {
            case "secondary" -> Set.of("SECONDARY");
            case "memory" -> Set.of("MEMORY");
            default -> Set.of();
        }).build();
    }

    /** The day asked about: the present, but for the certificate, which had expired by then. */
    LocalDate asOf() {
        return stamped.contains("SU 10054") ? LocalDate.of(2022, 1, 1) : Cases.TODAY;
    }

    /** The clock that the row speaks of. */
    Requirement requirement() {
        return switch (method) {
            case "PRV replace", "PRV service", "transition" -> Requirement.RELIEF_VALVE;
            case "PRV visual" -> Requirement.RELIEF_VALVE_VISUAL;
            case "B620 inspection", "periodic" -> Requirement.PERIODIC_TEST;
            case "intermediate" -> Requirement.INTERMEDIATE_TEST;
            case "10-year inspection" -> Requirement.TEN_YEAR_EXAMINATION;
            case "20-year inspection" -> Requirement.TWENTY_YEAR_EXAMINATION;
            case "written scheme date", "PSSR only" -> Requirement.WRITTEN_SCHEME;
            case "first follow-up", "follow-up", "repair after fail" -> Requirement.CATHODIC_PROTECTION;
            default -> Requirement.SHELL;
        };
    }

    private ContainerKind kind() {
        if (stamped.contains("ASME tank") || stamped.contains("bulk tank") || stamped.contains("underground")) {
            return ContainerKind.STATIONARY_TANK;
        }
        if (stamped.contains("TC-331") || stamped.equals("tank-vehicle")) {
            return ContainerKind.CARGO_TANK;
        }
        return stamped.equals("tank-container") || stamped.contains("portable tank")
                ? ContainerKind.PORTABLE_TANK
                : ContainerKind.CYLINDER;
    }

    private @Nullable Specification specification() {
        Matcher design = DESIGN.matcher(stamped);
        if (design.find()) {
            return Specification.parse(design.group());
        }
        for (String one : List.of("TC-4BAM", "TC-4BWM", "TC-3AAM", "DOT-4BA240", "ADR-pi", "TC-331", "UN portable")) {
            if (stamped.startsWith(one)) {
                return Specification.parse(one.replace("UN portable", "UN T50"));
            }
        }
        return switch (row.get("id")) {
            case "CA-09" -> Specification.parse("TC-4EM17");
            case "CA-13" -> Specification.parse("TC-SU 5931");
            case "UN-01", "UN-02" -> Specification.parse("UN ISO 4706");
            case "EU-07" -> Specification.parse("PI");
            case "EU-11" -> Specification.parse("ADR-DRUM");
            case "US-04", "US-05" -> Specification.parse("DOT-4E240");
            default -> kind() == ContainerKind.STATIONARY_TANK ? Specification.ASME : null;
        };
    }

    private @Nullable WaterCapacity capacity() {
        if (kind() == ContainerKind.CYLINDER) {
            return WaterCapacity.parse(stamped.contains("450 L") ? "450 L" : "47.6 lb");
        }
        for (String word : List.of("13000 L", "13250 L", "3500 USWG", "5000 USWG", "2500 USWG")) {
            if (stamped.contains(word)) {
                return WaterCapacity.parse(word);
            }
        }
        return WaterCapacity.gallons(stamped.contains("any PRV") ? "5000" : "500");
    }

    private @Nullable ExtendedPeriod extended() {
        if (stamped.contains("P15Y")) {
            return method.equals("status lost") ? ExtendedPeriod.NONE : ExtendedPeriod.P15Y;
        }
        if (stamped.contains("CoP 31")) {
            return ExtendedPeriod.COP31;
        }
        return stamped.contains("15 y approved") ? ExtendedPeriod.SPECIAL_PROVISION_V : null;
    }

    private String lading() {
        return row.get("service").contains("non-LPG") ? "OXYGEN" : "LPG";
    }

    private List<Requalification> history() {
        if (row.get("last_requal").equals("-")) {
            return List.of();
        }
        Method done = switch (method) {
            case "PRV replace" -> Method.VALVE_REPLACED;
            case "PRV visual" -> Method.VALVE_INSPECTED;
            case "B620 inspection", "periodic", "intermediate" -> Method.PERIODIC;
            case "follow-up" -> Method.PROTECTION_TESTED;
            case "repair after fail" -> Method.PROTECTION_INSTALLED;
            default -> null;
        };
        return List.of(Requalification.passed(YearMonth.parse(row.get("last_requal")), done));
    }
}
