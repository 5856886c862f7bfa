package org.collarbook.registry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.platform.Ids;
import org.collarbook.regulation.Jurisdiction;
import org.collarbook.regulation.Lading;
import org.collarbook.regulation.Method;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.collarbook.testing.TestClock;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.OptimisticLockingFailureException;
import org.springframework.transaction.support.TransactionTemplate;

@RegisterTest
class ContainerBatchTests {

    private static final UUID CLERK = UUID.randomUUID();

    private final ContainerBatch batch;
    private final Containers containers;
    private final Declarations declarations;
    private final TransactionTemplate transaction;
    private final Tables tables;

    ContainerBatchTests(ContainerBatch batch, Containers containers, Declarations declarations,
            TransactionTemplate transaction, Tables tables) {
        this.batch = batch;
        this.containers = containers;
        this.declarations = declarations;
        this.transaction = transaction;
        this.tables = tables;
    }

    private static Marks marks(@Nullable String maker, String serial, @Nullable String month, String tare) {
        var reading = new StampedMarks("CYLINDER", "DOT-4BA240", maker, serial, month, "47.6 lb", tare, "240")
                .read(TestClock.TODAY);
        assertThat(reading.refusals()).isEmpty();
        return Objects.requireNonNull(reading.marks());
    }

    private static NewContainer cylinder(@Nullable String maker, @Nullable String month) {
        return NewContainer.of(marks(maker, Given.serial(), month, "TW 17.0"), Particulars.UNKNOWN,
                new Tag("\\N \\t, \"" + Given.serial() + "\" é"));
    }

    private List<UUID> insert(NewContainer... rows) {
        return transaction.execute(status -> batch.insert(Arrays.asList(rows), CLERK));
    }

    @Test
    void whatIsCopiedInReadsBackTheSame() {
        var declaration = new Declaration(Ids.next(), "R. Alder", LocalDate.of(2026, 11, 1), "all coated, LP-gas only",
                Jurisdiction.US, true, Lading.LPG, true, true, null, null, null, true, Method.EXTERNAL_VISUAL, false);
        declarations.add(declaration, CLERK);
        assertThat(declarations.find(declaration.id())).contains(declaration);
        var completed = Particulars.UNKNOWN.completedBy(declaration);
        var declared = new NewContainer(marks("QX", Given.serial(), "5-04", "7.7 kg"), completed.particulars(), null,
                declaration.id(), completed.declared());
        assertThat(completed.declared()).isEqualTo(Set.of(DeclarableFact.COATED, DeclarableFact.LADING,
                DeclarableFact.EXCLUSIVE, DeclarableFact.CORROSION_FREE));
        var rows = new NewContainer[]{cylinder("QX", "5-04"), cylinder(null, null), declared};

        var ids = insert(rows);

        for (int i = 0; i < rows.length; i++) {
            var read = containers.find(ids.get(i)).orElseThrow();
            assertThat(read.content()).isEqualTo(rows[i]);
            assertThat(read.size()).isEqualTo(new Size("20 lb"));
            assertThat(read.version()).isZero();
        }
    }

    @Test
    void aDeclaredFactRestsOnItsDeclarationUntilItIsCorrected() {
        var declaration = new Declaration(Ids.next(), "R. Alder", LocalDate.of(2026, 11, 1), "coated, LP-gas only",
                null, true, Lading.LPG, null, null, null, null, null, null, null, null);
        declarations.add(declaration, CLERK);
        var completed = Particulars.UNKNOWN.completedBy(declaration);
        var id = insert(new NewContainer(marks("QX", Given.serial(), "5-04", "17 lb"), completed.particulars(), null,
                declaration.id(), completed.declared())).getFirst();
        var recorded = containers.find(id).orElseThrow();
        var bare = new Particulars(false, true, null, null, null, null, completed.particulars().service(),
                Ownership.UNKNOWN, null, null, null, null, null, false);

        var corrected = containers.correct(id, "\"0\"", NewContainer.of(recorded.marks(), bare, null), "looked at it",
                new Caller(CLERK, "clerk", Set.of(Role.CLERK), CustomerScope.EVERYONE));

        assertThat(corrected.declared()).isEqualTo(Set.of(DeclarableFact.LADING));
        assertThat(corrected.declaration()).isEqualTo(declaration.id());
        assertThat(corrected.particulars().coated()).isFalse();
    }

    @Test
    void oneQueryFindsWhatIsThereByNaturalKeyAndTag() {
        var rows = List.of(cylinder("QX", "5-04"), cylinder(null, "5-04"), cylinder("QX", null), cylinder(null, null));
        insert(rows.toArray(NewContainer[]::new));
        var keys = new ArrayList<>(rows.stream().map(row -> row.marks().naturalKey()).toList());
        keys.add(cylinder("QX", "5-04").marks().naturalKey());

        var found = transaction.execute(status -> batch.alike(keys));
        var tags = transaction.execute(status -> batch.tagsInUse(rows.stream().map(NewContainer::tag).toList()));

        assertThat(found).containsOnlyKeys(keys.subList(0, 4));
        rows.forEach(row -> assertThat(found.get(row.marks().naturalKey()).content()).isEqualTo(row));
        assertThat(tags).hasSize(4);
    }

    @Test
    void aTakenKeyOrTagFailsTheWholeBatch() {
        var row = cylinder("QX", "5-04");
        insert(row);
        var sameTag = NewContainer.of(cylinder("QX", "5-04").marks(), Particulars.UNKNOWN, row.tag());

        tables.unchangedBy(() -> {
            assertThatThrownBy(() -> insert(cylinder("QX", "5-04"), row))
                    .isInstanceOf(DataIntegrityViolationException.class)
                    .hasStackTraceContaining("container_natural_key");
            assertThatThrownBy(() -> insert(cylinder("QX", "5-04"), sameTag))
                    .isInstanceOf(DataIntegrityViolationException.class).hasStackTraceContaining("container_tag");
        });
        assertThatThrownBy(() -> batch.insert(List.of(row), CLERK)).as("outside a transaction")
                .hasMessageContaining("transaction");
    }

    @Test
    void updatesKeepEarlierValuesAndRefuseStaleRows() {
        var ids = insert(cylinder("QX", "5-04"), cylinder("QX", "5-04"), cylinder("QX", "5-04"));
        var changes = ids.subList(0, 2).stream().map(id -> containers.find(id).orElseThrow())
                .map(before -> new ContainerBatch.Change(before, NewContainer.of(
                        marks("QX", before.marks().serial().value().value(), "5-04", "18.5 lb"),
                        before.particulars(), null)))
                .toList();
        long kept = tables.count("mark_correction");

        transaction.executeWithoutResult(status -> {
            batch.update(changes.subList(0, 1), "ledger of November", CLERK);
            batch.update(changes.subList(1, 2), "ledger of November", CLERK);
        });

        for (var change : changes) {
            var read = containers.find(change.before().id()).orElseThrow();
            assertThat(read.content()).isEqualTo(change.after());
            assertThat(read.version()).isEqualTo(1);
        }
        assertThat(tables.count("mark_correction")).as("tare and tag of two").isEqualTo(kept + 4);
        tables.unchangedBy(() -> assertThatThrownBy(() -> transaction
                .executeWithoutResult(status -> batch.update(changes, "ledger of November", CLERK)))
                .isInstanceOf(OptimisticLockingFailureException.class));
    }
}
