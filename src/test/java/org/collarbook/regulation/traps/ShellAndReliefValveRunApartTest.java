package org.collarbook.regulation.traps;

import static org.assertj.core.api.Assertions.assertThat;
import static org.collarbook.regulation.traps.Asked.cylinder;
import static org.collarbook.regulation.traps.Asked.due;
import static org.collarbook.regulation.traps.Asked.may;
import static org.collarbook.regulation.traps.Asked.there;
import static org.collarbook.regulation.traps.Asked.today;
import static org.collarbook.regulation.traps.Asked.whyNotFill;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.Cases;
import org.collarbook.regulation.FactsBuilder;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.Use;
import org.collarbook.regulation.WaterCapacity;
import org.junit.jupiter.api.Test;

/** The relief valve has a clock of its own and either can bar the fill (Canadian Propane Association on TU 0807). */
@Trap(of = Catalogue.WORLD, number = 9)
class ShellAndReliefValveRunApartTest {

    private static FactsBuilder canadian(Requalification... done) {
        return there("CA", cylinder("TC-4BWM16", "2012-05")).waterCapacity(WaterCapacity.parse("450 L"))
                .requalifications(List.of(done));
    }

    @Test
    void aNewValveDoesNotMoveTheShellNorATestTheValve() {
        var tested = today(canadian(Cases.mark("2022-05", Method.VOLUMETRIC_EXPANSION)));
        assertThat(due(tested)).isEqualTo("2032-05");
        assertThat(due(tested, Requirement.RELIEF_VALVE)).isEqualTo("2022-05");
        assertThat(whyNotFill(tested)).contains(ReasonCode.OVERDUE);
        assertThat(may(tested)).as("it bars the fill alone").isEqualTo("-CU");
        var fitted = today(canadian(Cases.mark("2022-05", Method.VALVE_REPLACED)));
        assertThat(due(fitted)).isEqualTo("2022-05");
        assertThat(due(fitted, Requirement.RELIEF_VALVE)).isEqualTo("2032-05");
        assertThat(may(fitted)).isEqualTo("---");
        assertThat(whyNotFill(today(canadian(Cases.mark("2022-05", Method.VOLUMETRIC_EXPANSION),
                Cases.mark("2022-05", Method.VALVE_REPLACED))))).doesNotContain(ReasonCode.OVERDUE);
    }

    /** An industrial truck's cylinder, valve of twelve years and then ten (from memory), where a fill can be allowed. */
    @Test
    void onAnIndustrialTruckTheValveAloneBarsTheFill() {
        List<Requalification> tested = new ArrayList<>(List.of(Cases.mark("2024-05", Method.VOLUMETRIC_EXPANSION)));
        FactsBuilder truck = cylinder("DOT-4E240", "2012-05").use(Use.INDUSTRIAL_TRUCK).enable(Set.of("MEMORY"));
        var oldValve = today(truck.requalifications(tested));
        assertThat(whyNotFill(oldValve)).containsExactly(ReasonCode.OVERDUE);
        assertThat(may(oldValve)).isEqualTo("-CU");
        tested.add(Cases.mark("2024-05", Method.VALVE_REPLACED));
        assertThat(may(today(truck.requalifications(tested)))).isEqualTo("FCU");
    }
}
