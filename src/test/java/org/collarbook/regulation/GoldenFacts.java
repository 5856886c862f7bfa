package org.collarbook.regulation;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Turns a row of golden/us.tsv, which is written for people, into facts. All that the row does not speak of is known and
 * in order: marks legible, owner consenting, looked at, no hold, marks with a RIN, and no fill recorded.
 */
final class GoldenFacts {

    static final Rin RIN = new Rin("A123");

    private final Map<String, String> row;
    private final String service;
    private final String stamped;

    GoldenFacts(Map<String, String> row) {
        this.row = row;
        this.service = row.get("service");
        this.stamped = row.get("spec");
    }

    Facts facts() {
        FactsBuilder facts = Facts.builder().jurisdiction(Jurisdiction.US).kind(kind()).specification(specification());
        facts.manufactured(YearMonth.parse(row.get("manufacture"))).waterCapacity(capacity());
        facts.servicePressure(pressure()).marksLegible(true).ownerConsent(true).condition(Condition.SOUND)
                .holds(List.of());
        facts.coated(coated()).lined(service.contains("lined")).use(use()).service(service()).steel(steel());
        facts.requalifications(history()).policies(policies()).enable(bases());
        return facts.build();
    }

    /** The clock that the row speaks of. */
    Requirement requirement() {
        String method = row.get("method_or_suffix");
        if (stamped.equals("Delivery hose")) {
            return Requirement.DELIVERY_HOSE;
        }
        if (kind() == ContainerKind.PORTABLE_TANK) {
            return row.get("note").contains("intermediate") ? Requirement.INTERMEDIATE_TEST : Requirement.PERIODIC_TEST;
        }
        if (kind() == ContainerKind.CARGO_TANK) {
            return service.contains("(V)")
                    ? Requirement.EXTERNAL_VISUAL
                    : service.contains("(K)") ? Requirement.LEAKAGE : Requirement.PRESSURE;
        }
        if (service.contains("filler")) {
            return Requirement.FILLER;
        }
        return method.equals("first replacement") ? Requirement.RELIEF_VALVE : Requirement.SHELL;
    }

    private ContainerKind kind() {
        if (stamped.startsWith("MC-") || stamped.equals("Delivery hose")) {
            return ContainerKind.CARGO_TANK;
        }
        if (stamped.startsWith("ASME")) {
            return ContainerKind.STATIONARY_TANK;
        }
        return stamped.contains("portable tank") ? ContainerKind.PORTABLE_TANK : ContainerKind.CYLINDER;
    }

    private Specification specification() {
        if (stamped.startsWith("TC-4BAM")) {
            return Specification.parse("TC-4BAM17");
        }
        if (stamped.startsWith("PRV on")) {
            return Specification.parse("DOT-4E240");
        }
        if (stamped.equals("Delivery hose")) {
            return Specification.parse("MC-331");
        }
        String first = stamped.split(" ")[0];
        if (stamped.contains("portable tank")) {
            return Specification.parse(first.equals("UN") ? "UN T50" : "DOT-57");
        }
        return Specification.parse(first);
    }

    private @Nullable WaterCapacity capacity() {
        if (stamped.contains("WC<=12")) {
            return WaterCapacity.pounds("11.9");
        }
        if (kind() == ContainerKind.CYLINDER) {
            return WaterCapacity.pounds(service.contains("WC<=125") || service.contains("(b)(1)(ii)") ? "110" : "47.6");
        }
        return WaterCapacity.gallons(service.contains("<3500")
                ? "3000"
                : kind() == ContainerKind.STATIONARY_TANK
                        ? "500"
                        : "3500");
    }

    private @Nullable BigDecimal pressure() {
        if (kind() != ContainerKind.CYLINDER) {
            return new BigDecimal(250);
        }
        return specification().servicePressurePsig() == null
                ? new BigDecimal(stamped.startsWith("4") ? 240 : 1800)
                : null;
    }

    /** A row that cites (e) speaks of a coated cylinder; one that says nothing of it leaves it unknown. */
    private @Nullable Boolean coated() {
        if (service.contains("NOT meet (e)")) {
            return false;
        }
        return service.contains("coat") || row.get("citation").contains("(e)") ? Boolean.TRUE : null;
    }

    private @Nullable Use use() {
        if (service.contains("extinguisher")) {
            return Use.FIRE_EXTINGUISHER;
        }
        if (service.contains("industrial truck")) {
            return Use.INDUSTRIAL_TRUCK;
        }
        return service.contains("SCUBA") ? Use.SCUBA : service.contains("aircraft") ? Use.AIRCRAFT : Use.FUEL;
    }

    private Service service() {
        boolean exclusive = service.contains("exclusive") || service.contains("dedicated")
                || service.contains("lined+") || service.contains("(b)(1)(ii)")
                || service.contains("liquefied hydrocarbon");
        boolean free = service.contains("exclusive") || service.contains("free of") || service.contains("(b)(1)(ii)")
                || service.contains("lined+");
        return new Service(new Lading(lading()), exclusive, free ? Boolean.TRUE : null);
    }

    private String lading() {
        for (String[] pair : new String[][]{{"non-LPG", "NITROGEN"}, {"methyl bromide", "METHYL_BROMIDE"},
                {"carbon dioxide", "CARBON_DIOXIDE"}, {"acetylene", "ACETYLENE"}, {"chlorine", "CHLORINE"},
                {"hydrogen", "HYDROGEN_IN_METAL_HYDRIDE"}, {"cryogenic", "NITROGEN"}, {"SCUBA", "AIR"},
                {"aircraft", "AIR"},
                {"extinguisher", "CARBON_DIOXIDE"}, {"any authorized", "NITROGEN"}, {"industrial gas", "OXYGEN"}}) {
            if (service.contains(pair[0])) {
                return pair[1];
            }
        }
        // "gas listed in (b)(1)(ii)" and "liquefied hydrocarbon": LP-gas is one of both
        return "LPG";
    }

    private @Nullable Steel steel() {
        return stamped.contains("steel") || service.contains("NQT")
                ? Steel.NQT
                : service.contains("QT") ? Steel.QT : null;
    }

    private List<Requalification> history() {
        if (row.get("last_requal").equals("-")) {
            return List.of();
        }
        String mark = row.get("method_or_suffix");
        YearMonth month = YearMonth.parse(row.get("last_requal"));
        Method method = switch (mark) {
            case "S" -> Method.PROOF_PRESSURE;
            case "E" -> Method.EXTERNAL_VISUAL;
            case "VE" -> Method.EDDY_CURRENT_VISUAL;
            case "V", "K", "P" -> Method.valueOf(mark);
            case "5-year", "periodic" -> Method.PERIODIC;
            case "hose test" -> Method.HOSE_TESTED;
            default -> Method.VOLUMETRIC_EXPANSION;
        };
        return List.of(new Requalification(month, method, mark.equals("STAR"), false, RIN, false,
                Requalification.Result.PASSED));
    }

    private Set<Policy> policies() {
        Set<Policy> policies = EnumSet.noneOf(Policy.class);
        needs("policy:").forEach(name -> policies.add(Policy.valueOf(name)));
        return policies;
    }

    private Set<String> bases() {
        return needs("basis:").collect(Collectors.toSet());
    }

    private Stream<String> needs(String kind) {
        return Stream.of(row.get("needs").split(",")).filter(need -> need.startsWith(kind))
                .map(need -> need.substring(kind
                        .length()));
    }
}
