package org.collarbook.registry;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;

@RegisterTest
class RegistrationTests {

    private final Api.Session clerk;
    private final Tables tables;

    RegistrationTests(Api api, Tables tables) {
        this.clerk = api.as(Role.CLERK);
        this.tables = tables;
    }

    @Test
    void keepsMarksAsStampedBesideWhatTheyMean() {
        var body = Given.cylinder();
        body.put("serial", body.get("serial") + "a");
        body.put("tag", "(8003)0952114112345432" + Given.serial());

        var created = clerk.post("/api/containers", body).expect(201);

        assertThat(created.header("Location")).isEqualTo("/api/containers/" + created.id());
        assertThat(created.etag()).isEqualTo("\"0\"");
        var read = clerk.get(created.header("Location")).expect(200);
        assertThat(read.etag()).isEqualTo("\"0\"");
        assertThat(read.json()).isEqualTo(created.json());
        assertThat(read.text("/manufactured")).isEqualTo("2004-05");
        assertThat(read.text("/asStamped/manufactured")).isEqualTo("5-04");
        assertThat(read.text("/tare")).isEqualTo("17 lb");
        assertThat(read.text("/asStamped/tare")).isEqualTo("TW 17.0");
        assertThat(read.text("/serial")).isEqualTo(String.valueOf(body.get("serial")).toUpperCase());
        assertThat(read.text("/asStamped/serial")).isEqualTo(body.get("serial"));
        assertThat(read.text("/size")).isEqualTo("20 lb");
        assertThat(read.at("/asStamped").has("waterCapacity")).isFalse();
        assertThat(read.at("/lined").isMissingNode()).as("unknown is absent, never false").isTrue();
    }

    @Test
    void registersWithTheThreeRequiredFieldsAlone() {
        var created = clerk.post("/api/containers",
                Map.of("kind", "STATIONARY_TANK", "specification", "ASME", "serial", Given.serial())).expect(201);

        assertThat(created.text("/size")).isEqualTo("unknown size");
        assertThat(created.at("/collarRead").booleanValue()).isFalse();
    }

    @Test
    void answersTheSameMarksWithTheOtherContainerAndWhatTellsThemApart() {
        var body = Given.cylinder();
        var first = clerk.post("/api/containers", body).expect(201);
        body.put("serial", " " + String.valueOf(body.get("serial")).toLowerCase());
        body.put("tare", "18 lb");

        tables.unchangedBy(() -> {
            var conflict = clerk.post("/api/containers", body).expectProblem(409, "NATURAL_KEY_TAKEN");
            assertThat(conflict.text("/container/id")).isEqualTo(first.id());
            assertThat(conflict.text("/container/specification")).isEqualTo("DOT-4BA240");
            assertThat(conflict.at("/toldApartBy").findValuesAsString("field")).contains("tare");
        });
    }

    @Test
    void sameSerialOfAnotherMakerIsAnotherContainer() {
        var body = Given.cylinder();
        clerk.post("/api/containers", body).expect(201);
        body.put("maker", "ZZ");
        clerk.post("/api/containers", body).expect(201);

        var found = clerk.get("/api/containers?serial=" + body.get("serial")).expect(200);
        assertThat(found.at("/items")).hasSize(2);
    }

    @Test
    void unknownMakerAndMonthCountAsValuesOfTheirOwn() {
        var body = Map.of("kind", "CYLINDER", "specification", "DOT-4BA240", "serial", Given.serial());
        clerk.post("/api/containers", body).expect(201);

        clerk.post("/api/containers", body).expectProblem(409, "NATURAL_KEY_TAKEN");
    }

    @Test
    void answersATagInUseWithTheContainerThatHasIt() {
        var tag = Given.serial();
        var first = Given.cylinder();
        first.put("tag", tag);
        var second = Given.cylinder();
        second.put("tag", tag);
        var id = clerk.post("/api/containers", first).expect(201).id();

        tables.unchangedBy(() -> assertThat(clerk.post("/api/containers", second).expectProblem(409, "TAG_IN_USE")
                .text("/container/id")).isEqualTo(id));
        assertThat(clerk.get("/api/containers?tag=" + tag).text("/items/0/id")).isEqualTo(id);
    }

    @Test
    void aRepeatUnderTheSameKeyGivesTheStoredAnswerAndStoresNothing() {
        var once = clerk.with("Idempotency-Key", Given.serial());
        var body = Given.cylinder();
        var first = once.post("/api/containers", body).expect(201);

        tables.unchangedBy(() -> {
            var again = once.post("/api/containers", body).expect(201);
            assertThat(again.json()).isEqualTo(first.json());
            assertThat(again.etag()).isEqualTo(first.etag());
            assertThat(again.header("Location")).isEqualTo(first.header("Location"));
            assertThat(again.header("Idempotent-Replay")).isEqualTo("true");
            once.post("/api/containers", Given.cylinder()).expectProblem(422, "IDEMPOTENCY_KEY_REUSED");
        });
    }

    @Test
    void listsByPagesWithoutLossOrRepeat() {
        var serial = Given.serial();
        for (var maker : new String[]{"A", "B", "C", "D", "E"}) {
            var body = Given.cylinder();
            body.put("serial", serial);
            body.put("maker", maker);
            clerk.post("/api/containers", body).expect(201);
        }
        var makers = new java.util.ArrayList<String>();
        var next = "";
        do {
            var page = clerk.get("/api/containers?size=2&serial=" + serial + "&cursor=" + next).expect(200);
            page.at("/items").forEach(item -> makers.add(item.at("/maker").asString()));
            next = page.text("/next");
        } while (!next.isEmpty());
        assertThat(makers).containsExactly("A", "B", "C", "D", "E");
    }
}
