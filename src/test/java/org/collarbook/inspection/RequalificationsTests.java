package org.collarbook.inspection;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.platform.ProblemException;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification;
import org.collarbook.regulation.Rin;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.transaction.support.TransactionTemplate;

@RegisterTest
class RequalificationsTests {

    private static final Caller YARD = new Caller(UUID.randomUUID(), "yard", Set.of(Role.YARD),
            CustomerScope.EVERYONE);

    private final Requalifications requalifications;
    private final TransactionTemplate transaction;
    private final Given given;
    private final Tables tables;

    RequalificationsTests(Requalifications requalifications, TransactionTemplate transaction, Given given,
            Tables tables) {
        this.requalifications = requalifications;
        this.transaction = transaction;
        this.given = given;
        this.tables = tables;
    }

    private static RequalificationEntry entry(UUID container, Requalification done) {
        return new RequalificationEntry(container, done, null, null);
    }

    private static Requalification visual(String month) {
        return Requalification.passed(YearMonth.parse(month), Method.EXTERNAL_VISUAL, Rin.parse("B045"));
    }

    @Test
    void whatIsRecordedReadsBackTheSameTheEarliestFirst() {
        var container = given.registered();
        var bare = Requalification.passed(YearMonth.of(2009, 4), null);
        var full = new Requalification(YearMonth.of(2014, 8), Method.VOLUMETRIC_EXPANSION, true, true,
                Rin.parse("A123"), false, Requalification.Result.REJECTED);
        requalifications.append(entry(container, visual("2021-05")), YARD);
        transaction.executeWithoutResult(status -> assertThat(requalifications.insert(
                List.of(entry(container, full), entry(container, bare), entry(container, full)), YARD.id()))
                .isEqualTo(2));

        assertThat(requalifications.of(List.of(container)))
                .isEqualTo(Map.of(container, List.of(bare, full, visual("2021-05"))));
    }

    @ParameterizedTest
    @EnumSource
    void everyMethodCanBeRecorded(Method method) {
        var container = given.registered();
        var done = Requalification.passed(YearMonth.of(2019, 3), method, Rin.parse("B045"));
        requalifications.append(entry(container, done), YARD);
        assertThat(requalifications.of(List.of(container))).isEqualTo(Map.of(container, List.of(done)));
    }

    /** The cylinder is of May 2004, today is 2026-11-25. */
    @Test
    void whatCannotBeIsRefused() {
        var container = given.registered();
        requalifications.append(entry(container, visual("2004-05")), YARD);
        requalifications.append(entry(container, visual("2026-11")), YARD);

        tables.unchangedBy(() -> {
            refused(entry(container, visual("2004-04")), "BEFORE_MANUFACTURE");
            refused(entry(container, visual("2026-12")), "IN_THE_FUTURE");
            refused(entry(container, visual("2026-11")), "ALREADY_RECORDED");
            refused(entry(UUID.randomUUID(), visual("2026-11")), "NOT_FOUND");
        });
    }

    private void refused(RequalificationEntry entry, String code) {
        assertThatThrownBy(() -> requalifications.append(entry, YARD)).isInstanceOf(ProblemException.class)
                .hasMessageContaining(code);
    }

    @Test
    void manyContainersAreReadInOneGo() {
        var containers = new ArrayList<UUID>();
        for (int i = 0; i < 5; i++) {
            containers.add(given.registered());
        }
        transaction.executeWithoutResult(status -> requalifications.insert(
                containers.subList(0, 4).stream().map(id -> entry(id, visual("2020-03"))).toList(), YARD.id()));

        assertThat(requalifications.of(containers)).containsOnlyKeys(containers.subList(0, 4));
    }
}
