package org.collarbook.regulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.Cases.TODAY;
import static org.collarbook.regulation.Cases.mark;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.collarbook.regulation.rulebook.RuleBookLoader;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The table of status by permission by kind, golden/status-permissions.tsv: every container of it is otherwise in order
 * and known to be empty, but the one to be used up.
 */
class StatusPermissionsTest {

    private static final RuleBook BOOK = RuleBookLoader.standard();

    static Stream<Map<String, String>> rows() {
        return Tsv.read("/golden/status-permissions.tsv").stream();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void permits(Map<String, String> row) {
        ContainerKind kind = ContainerKind.valueOf(row.get("kind"));
        Status status = Status.valueOf(row.get("status"));
        Assessment assessment = BOOK.assess(facts(kind, status), TODAY);
        assertThat(assessment.status()).as("%s", assessment).isEqualTo(status);
        assertThat(List.of(said(assessment.mayFill()), said(assessment.mayCarry()), said(assessment.mayCarryEmpty()),
                said(
                        assessment.mayUse())))
                .as("%s", assessment).containsExactly(row.get("mayFill"), row.get("mayCarry"), row.get(
                        "mayCarryEmpty"), row.get("mayUse"));
    }

    private static String said(Permission permission) {
        assertThat(permission.reasons().isEmpty()).isEqualTo(permission.allowed());
        return permission.allowed() ? "yes" : "no";
    }

    private static Facts facts(ContainerKind kind, Status status) {
        FactsBuilder facts = switch (kind) {
            case CYLINDER -> cylinder(status);
            case CARGO_TANK -> bobtail(status);
            case STATIONARY_TANK -> stationary(status);
            case PORTABLE_TANK -> portable(status);
            case EXTINGUISHER -> throw new AssertionError("an extinguisher is neither filled nor carried");
        };
        LocalDate filled = LocalDate.of(2021, 5, 20);
        facts.filledOn(filled).emptiedOn(status == Status.USE_UP ? null : filled.plusDays(30));
        return spoil(facts, kind, status).build();
    }

    private static FactsBuilder spoil(FactsBuilder facts, ContainerKind kind, Status status) {
        LocalDate day = LocalDate.of(2026, 10, 1);
        return switch (status) {
            case CONDEMNED -> facts.condition(new Condition(List.of(), null, null, null, null, day));
            case REJECTED -> facts.condition(new Condition(List.of(), null, null, null, day, null));
            case ON_HOLD -> facts.holds(List.of(new StandingHold("VALVE_BLOWN", day)));
            case UNDETERMINED -> kind == ContainerKind.STATIONARY_TANK
                    ? facts.specification(null)
                    : facts.requalifications(
                            null);
            default -> facts;
        };
    }

    private static FactsBuilder cylinder(Status status) {
        FactsBuilder facts = Cases.cylinder();
        return switch (status) {
            case OTHER_AUTHORITY -> facts.specification(Specification.parse("TC-4BAM17"));
            case NOT_REQUIRED -> facts.specification(Specification.parse("DOT-39"));
            case OVERDUE, USE_UP -> facts.requalifications(List.of(mark("2016-05", Method.EXTERNAL_VISUAL)));
            case DUE_THIS_MONTH -> facts.requalifications(List.of(mark("2021-11", Method.EXTERNAL_VISUAL)));
            default -> facts.requalifications(List.of(mark("2016-05", Method.VOLUMETRIC_EXPANSION)));
        };
    }

    private static FactsBuilder bobtail(Status status) {
        return Cases.bobtail(switch (status) {
            case OVERDUE, USE_UP -> YearMonth.of(2020, 5);
            case DUE_THIS_MONTH -> YearMonth.of(2025, 11);
            default -> YearMonth.of(2026, 3);
        });
    }

    private static FactsBuilder portable(Status status) {
        FactsBuilder facts = Cases.cylinder().kind(ContainerKind.PORTABLE_TANK)
                .specification(Specification.parse("DOT-51"));
        return facts.requalifications(List.of(mark(switch (status) {
            case OVERDUE, USE_UP -> "2020-05";
            case DUE_THIS_MONTH -> "2021-11";
            default -> "2024-03";
        }, Method.PERIODIC)));
    }

    /** Its shell is never due; its relief valve is, once that rule is asked for. */
    private static FactsBuilder stationary(Status status) {
        return switch (status) {
            case OVERDUE, DUE_THIS_MONTH, IN_DATE -> Cases.stationary().enable(Set.of("MEMORY"))
                    .requalifications(List.of(mark(status == Status.OVERDUE
                            ? "2016-05"
                            : status == Status.IN_DATE ? "2020-05" : "2016-11", Method.VALVE_REPLACED)));
            default -> Cases.stationary();
        };
    }
}
