package org.collarbook.compliance.declarations;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;

import org.collarbook.access.Caller;
import org.collarbook.access.CustomerScope;
import org.collarbook.access.Role;
import org.collarbook.compliance.Requirements;
import org.collarbook.compliance.declarations.GroupDeclaration.State;
import org.collarbook.platform.Journal;
import org.collarbook.registry.ContainerBatch;
import org.collarbook.registry.Containers;
import org.collarbook.registry.Marks;
import org.collarbook.registry.NewContainer;
import org.collarbook.registry.Serial;
import org.collarbook.registry.Stamped;
import org.collarbook.registry.Tag;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.TestClock;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

import tools.jackson.databind.json.JsonMapper;

/** A declaration for many is carried out whatever interrupts it, once for each, and loses nobody's change. */
@RegisterTest
class DeclarationSweepTests {

    private static final Caller CALLER = new Caller(UUID.randomUUID(), "clerk", Set.of(Role.CLERK),
            CustomerScope.EVERYONE);
    private static final int MANY = 2 * ApplyDeclaration.CHUNK + 200;

    private final GroupDeclarations declarations;
    private final ApplyDeclaration apply;
    private final DeclarationSweep sweep;
    private final ContainerBatch batch;
    private final Containers containers;
    private final Requirements requirements;
    private final Journal journal;
    private final TransactionTemplate transaction;
    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final TestClock clock;
    private final Api api;
    private final DeclaredFleet fleet;

    DeclarationSweepTests(GroupDeclarations declarations, ApplyDeclaration apply, DeclarationSweep sweep,
            ContainerBatch batch, Containers containers, Requirements requirements, Journal journal,
            TransactionTemplate transaction, JdbcClient jdbc, JsonMapper json, TestClock clock, Api api, Given given) {
        this.declarations = declarations;
        this.apply = apply;
        this.sweep = sweep;
        this.batch = batch;
        this.containers = containers;
        this.requirements = requirements;
        this.journal = journal;
        this.transaction = transaction;
        this.jdbc = jdbc;
        this.json = json;
        this.clock = clock;
        this.api = api;
        this.fleet = new DeclaredFleet(api, given);
    }

    private DeclareRequest request(Map<String, Object> facts) {
        return json.readValue(json.writeValueAsString(fleet.declaration(facts)), DeclareRequest.class);
    }

    /** As the service that was killed right after it had answered. */
    private UUID recorded(DeclareRequest request) {
        var read = request.read(clock);
        return transaction.execute(status -> declarations.record(read.declaration(), read.group(), "{}", CALLER)).id();
    }

    private List<UUID> many() {
        var first = containers.require(fleet.cylinder("coated", null));
        var more = IntStream.range(1, MANY).mapToObj(i -> {
            var body = first.content();
            var marks = body.marks();
            return NewContainer.of(new Marks(marks.kind(), marks.specification(), marks.maker(),
                    Stamped.of(Serial.parse(Given.serial())),
                    marks.manufactured(), marks.waterCapacity(), marks.tare(), marks.servicePressure()),
                    body.particulars(), null);
        }).toList();
        return transaction.execute(status -> {
            var ids = batch.insert(more, CALLER.id());
            journal.enterFirst(ids);
            requirements.assessFirst(ids);
            return ids;
        });
    }

    private String counts(UUID id) {
        return jdbc.sql("""
                select count(*) filter (where declared = '{coated}') || '/' || count(*) filter (where coated) || '/'
                    || (select count(*) from declaration_outcome o where o.declaration_id = :id) || '/'
                    || (select count(*) from mark_correction m join container d on d.id = m.container_id
                        where d.maker = :maker and m.field = 'coated')
                from container where maker = :maker""").param("id", id).param("maker", fleet.maker)
                .query(String.class).single();
    }

    private State state(UUID id) {
        return declarations.require(id).state();
    }

    @Test
    void aKilledOneIsGoneOnWith() {
        var ids = many();
        var id = recorded(request(Map.of("coated", true)));
        assertThat(state(id)).isEqualTo(State.APPLYING);
        assertThat(counts(id)).isEqualTo("500/500/500/500");
        sweep.over(id, 1);
        assertThat(counts(id)).isEqualTo("1000/1000/1000/1000");
        // killed before the chunk was committed
        transaction.executeWithoutResult(status -> {
            assertThat(apply.fillNext(declarations.require(id), ApplyDeclaration.FIRST)).hasSize(MANY - 1000);
            status.setRollbackOnly();
        });
        assertThat(counts(id)).isEqualTo("1000/1000/1000/1000");
        assertThat(state(id)).isEqualTo(State.APPLYING);
        sweep.run();
        assertThat(state(id)).isEqualTo(State.APPLIED);
        assertThat(counts(id)).isEqualTo("1200/1200/1200/1200");
        sweep.run();
        assertThat(counts(id)).isEqualTo("1200/1200/1200/1200");

        transaction.executeWithoutResult(status -> declarations.withdraw(id, "another yard", CALLER));
        assertThat(state(id)).isEqualTo(State.WITHDRAWING);
        assertThat(counts(id)).isEqualTo("700/700/1200/1700");
        sweep.run();
        assertThat(state(id)).isEqualTo(State.WITHDRAWN);
        assertThat(counts(id)).isEqualTo("0/0/1200/2400");
        assertThat(fleet.isWhole(ids.getFirst())).isTrue();
        assertThat(fleet.isWhole(ids.getLast())).isTrue();
    }

    /** What is not reached yet when it is withdrawn is never filled. */
    @Test
    void aWithdrawalInTheMiddleEndsIt() {
        many();
        var id = recorded(request(Map.of("coated", true)));
        transaction.executeWithoutResult(status -> declarations.withdraw(id, "another yard", CALLER));
        sweep.run();
        assertThat(counts(id)).isEqualTo("0/0/500/1000");
        assertThat(state(id)).isEqualTo(State.WITHDRAWN);
    }

    @Test
    void aChangeAtTheSameMomentIsNotLost() throws Exception {
        var busy = fleet.cylinder("coated", null, "tare", "TW 17.0");
        var free = fleet.cylinder("coated", null);
        var read = fleet.container(busy);
        var locked = new CountDownLatch(1);
        var goOn = new CountDownLatch(1);
        try (var threads = Executors.newFixedThreadPool(2)) {
            var change = threads.submit(() -> transaction.execute(status -> {
                var before = containers.require(busy);
                var changed = containers.correct(busy, read.etag(), NewContainer.of(before.marks(),
                        before.particulars(), new Tag("TAG" + fleet.maker)), "tagged", CALLER);
                locked.countDown();
                try {
                    assertThat(goOn.await(30, TimeUnit.SECONDS)).isTrue();
                } catch (InterruptedException interrupted) {
                    throw new IllegalStateException(interrupted);
                }
                return changed;
            }));
            assertThat(locked.await(30, TimeUnit.SECONDS)).isTrue();
            var declared = threads.submit(() -> fleet.declared(Map.of("coated", true)));
            while (!fleet.container(free).at("/coated").asBoolean()) {
                assertThat(declared.isDone()).isFalse();
                Thread.sleep(20);
            }
            assertThat(fleet.container(busy).at("/coated").isBoolean()).isFalse();
            goOn.countDown();
            change.get();
            var id = declared.get().text("/declaration/id");
            assertThat(state(UUID.fromString(id))).isEqualTo(State.APPLIED);
        }
        var after = fleet.container(busy);
        assertThat(after.text("/tag")).isEqualTo("TAG" + fleet.maker);
        assertThat(after.at("/coated").asBoolean()).isTrue();
        assertThat(after.at("/version").asInt()).isEqualTo(2);
        assertThat(fleet.isWhole(busy)).isTrue();
        assertThat(api.as(Role.CLERK).ifMatch(read).put("/api/containers/" + busy, fleet.body("reason", "late"))
                .status()).isEqualTo(412);
    }
}
