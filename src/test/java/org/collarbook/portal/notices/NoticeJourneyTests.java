package org.collarbook.portal.notices;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

import org.collarbook.access.Role;
import org.collarbook.compliance.ContainersAssessed;
import org.collarbook.inspection.Sheets;
import org.collarbook.portal.PortalTank;
import org.collarbook.portal.notices.NoticeFixture.Told;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

import tools.jackson.databind.JsonNode;

/** What happens to a customer's container, and what their endpoint is told of it. */
@RegisterTest
class NoticeJourneyTests {

    private final Api api;
    private final Given given;
    private final DeliverNotices deliver;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    private final Tables tables;
    private final ApplicationEventPublisher events;
    private final NoticeFixture fixture;

    NoticeJourneyTests(Api api, Given given, DeliverNotices deliver, JdbcClient jdbc, TransactionTemplate transaction,
            Tables tables, ApplicationEventPublisher events) {
        this.events = events;
        this.api = api;
        this.given = given;
        this.deliver = deliver;
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.tables = tables;
        this.fixture = new NoticeFixture(api, given, jdbc);
    }

    @AfterEach
    void close() {
        fixture.close();
    }

    private List<JsonNode> written(Told told) {
        return told.portal().get(told.path() + "/notices?size=1000").expect(200).at("/items").valueStream()
                .map(item -> item.at("/body")).toList().reversed();
    }

    private List<String> types(Told told) {
        return written(told).stream().map(body -> body.at("/type").asString()).toList();
    }

    @Test
    void aHoldIsToldSignedWithWhatTheCustomerNeedsAndNoMore() {
        var told = fixture.told(List.of("HOLD"));
        var body = Given.cylinder();
        var id = fixture.cylinderAt(told.site(), body);
        fixture.lift(fixture.hold(id));
        NoticeFixture.until(deliver, () -> told.receiver().received().size() == 2);
        var first = told.receiver().received().getFirst();
        NoticeFixture.assertSigned(first, told.secret());
        assertThat(first.header("webhook-id")).isEqualTo(first.json().at("/id").asString());
        var notice = first.json();
        assertThat(notice.propertyNames()).containsExactlyInAnyOrder("version", "id", "type", "occurredAt",
                "container", "site", "status", "reason", "due", "lastDay");
        assertThat(notice.at("/version").asInt()).isEqualTo(1);
        assertThat(notice.at("/type").asString()).isEqualTo("container.held");
        assertThat(notice.at("/occurredAt").asString()).isEqualTo("2026-11-25T12:00:00Z");
        assertThat(notice.at("/container/id").asString()).isEqualTo(id.toString());
        assertThat(notice.at("/container/serial").asString()).isEqualTo(body.get("serial"));
        assertThat(notice.at("/container/specification").asString()).isEqualTo("DOT-4BA240");
        assertThat(notice.at("/container/size").asString()).isEqualTo("20 lb");
        assertThat(notice.at("/site/id").asString()).isEqualTo(told.site().toString());
        assertThat(notice.at("/status").asString()).isEqualTo("ON_HOLD");
        assertThat(notice.at("/reason").asString()).contains("It is lost.");
        assertThat(notice.at("/due").asString()).isEqualTo("2016-05");
        assertThat(told.receiver().types()).containsExactly("container.held", "container.released");
        assertThat(told.receiver().received().getLast().json().at("/status").asString()).isEqualTo("OVERDUE");
    }

    /** What the staff wrote is theirs, as it is in what a portal reads. */
    @Test
    void whyATankWasStoppedStaysWithTheStaff() {
        var told = fixture.told(List.of("HOLD"));
        var tank = given.registered(PortalTank.body());
        given.moved(tank, told.site(), "2026-11-20T09:00:00Z");
        api.as(Role.YARD).post("/api/containers/" + tank + "/out-of-service",
                Map.of("since", "2026-11-22", "reason", "quarrel over the bill")).expect(201);
        var notice = written(told).getFirst();
        assertThat(notice.at("/type").asString()).isEqualTo("container.held");
        assertThat(notice.at("/reason").asString()).contains("It was taken out of service on 2026-11-22.");
        assertThat(notice.toString()).doesNotContain("quarrel");
    }

    @Test
    void movesAreToldToWhoeverItConcernsWithNothingOfTheOther() {
        var one = fixture.told(List.of("MOVED", "HOLD"));
        var other = fixture.told(List.of("MOVED", "HOLD"));
        var second = given.site(one.customer());
        var id = fixture.cylinderAt(one.site());
        given.moved(id, second, "2026-11-21T09:00:00Z");
        given.moved(id, other.site(), "2026-11-22T09:00:00Z");
        fixture.hold(id);
        given.moved(id, given.site(null), "2026-11-23T09:00:00Z");
        assertThat(types(one)).containsExactly("container.arrived", "container.moved", "container.left");
        assertThat(types(other)).containsExactly("container.arrived", "container.held", "container.left");
        var moved = written(one).get(1);
        assertThat(moved.at("/previousSite/id").asString()).isEqualTo(one.site().toString());
        assertThat(moved.at("/site/id").asString()).isEqualTo(second.toString());
        var left = written(one).get(2);
        assertThat(left.propertyNames()).containsExactlyInAnyOrder("version", "id", "type", "occurredAt", "container",
                "previousSite", "reason");
        assertThat(left.at("/previousSite/id").asString()).isEqualTo(second.toString());
        var names = jdbc.sql("select id::text from site where id = ? union select code from site where id = ?"
                + " union select name from site where id = ?").params(other.site(), other.site(), other.site())
                .query(String.class).list();
        assertThat(written(one).toString()).doesNotContain(names).doesNotContain(other.customer().toString());
    }

    /** 49 CFR 180.205(i): a condemned cylinder is out of service for good; a slip of the pen is corrected. */
    @Test
    void aCondemnationAndItsCorrectionAreTold() {
        var told = fixture.told(List.of("CONDEMNED"));
        var id = fixture.cylinderAt(told.site());
        var path = "/api/containers/" + id + "/requalifications";
        var record = api.as(Role.YARD).post(path, Sheets.condemned(Sheets.approved(api))).expect(201);
        assertThat(types(told)).containsExactly("container.condemned");
        assertThat(written(told).getFirst().at("/status").asString()).isEqualTo("CONDEMNED");
        assertThat(written(told).getFirst().at("/reason").asString()).startsWith("It is out of service for good.");
        api.as(Role.ADMINISTRATOR).post("/api/requalifications/" + record.id() + "/corrections",
                Sheets.correction("another cylinder", null)).expect(201);
        assertThat(types(told)).containsExactly("container.condemned", "container.reinstated");
    }

    /** The site goes to another customer with all that stands there, under a name of the new customer's. */
    @Test
    void aSiteThatChangesHandsTellsTheFormerCustomerItsOwnNameForIt() {
        var one = fixture.told(List.of("MOVED"));
        var other = fixture.told(List.of("MOVED"));
        var id = fixture.cylinderAt(one.site());
        var clerk = api.as(Role.CLERK);
        var site = clerk.get("/api/sites/" + one.site()).expect(200);
        var body = Given.depot();
        body.put("code", site.text("/code"));
        body.put("name", "The new owner's yard");
        body.put("kind", "CUSTOMER");
        body.put("customerId", other.customer());
        clerk.ifMatch(site).put("/api/sites/" + one.site(), body).expect(200);
        assertThat(types(one)).containsExactly("container.arrived", "container.left");
        assertThat(written(one).getLast().at("/previousSite/name").asString()).isEqualTo(site.text("/name"));
        assertThat(types(other)).containsExactly("container.arrived");
        assertThat(written(other).getLast().at("/container/id").asString()).isEqualTo(id.toString());
        assertThat(written(other).getLast().at("/site/name").asString()).isEqualTo("The new owner's yard");
    }

    @Test
    void whatWasThereBeforeIsNotToldAndWhatChangesFromThenOnIs() {
        var customer = given.customer();
        var site = given.site(customer);
        var held = fixture.cylinderAt(site);
        var hold = fixture.hold(held);
        var receiver = fixture.receiver();
        var told = fixture.told(customer, site, NoticeFixture.wanted(receiver.url(), List.of("HOLD", "MOVED")));
        assertThat(types(told)).isEmpty();
        fixture.hold(held);
        assertThat(types(told)).as("on hold it was already").isEmpty();
        fixture.lift(hold);
        assertThat(types(told)).as("the second hold stands").isEmpty();
        given.moved(held, given.site(null), "2026-11-23T09:00:00Z");
        assertThat(types(told)).containsExactly("container.left");
    }

    /** A movement that was recorded late and lies before where it stands now changes nothing that is so now. */
    @Test
    void aLateTruthThatChangesNothingNowIsNotTold() {
        var told = fixture.told(List.of("MOVED"));
        var id = fixture.cylinderAt(told.site());
        given.moved(id, given.site(told.customer()), "2026-11-19T09:00:00Z");
        assertThat(types(told)).containsExactly("container.arrived");
    }

    @Test
    void whatIsRolledBackIsNotTold() {
        var told = fixture.told(List.of("HOLD", "MOVED"));
        var id = fixture.cylinderAt(told.site());
        var count = types(told).size();
        tables.unchangedBy(() -> api.as(Role.YARD).post("/api/movements", Map.of("containerId", id, "toSite",
                new UUID(7, 7), "occurredAt", "2026-11-24T09:00:00Z")).expect(400));
        transaction.executeWithoutResult(status -> {
            jdbc.sql("update requirement set standing = 'ON_HOLD' where container_id = ?").param(id).update();
            events.publishEvent(new ContainersAssessed(List.of(id)));
            assertThat(tables.count("notice where container_id = '" + id + "'")).isEqualTo(count + 1);
            status.setRollbackOnly();
        });
        assertThat(types(told)).hasSize(count);
    }

    /** A merged record is closed, wherever what it said is kept from now on. */
    @Test
    void aRecordThatIsMergedIntoAnotherHasLeft() {
        var told = fixture.told(List.of("MOVED"));
        var kept = given.registered();
        var closed = fixture.cylinderAt(told.site());
        var clerk = api.as(Role.CLERK);
        var path = "/api/containers/" + kept;
        clerk.ifMatch(clerk.get(path)).post(path + "/merges", Map.of("absorbed", closed, "reason", "the same one",
                "setAside", List.of("serial"), "fillWillBeAllowed", true)).expect(201);
        assertThat(types(told)).contains("container.left");
        var about = written(told).stream().collect(Collectors.toMap(
                body -> body.at("/container/id").asString() + body.at("/type").asString(), body -> body));
        assertThat(about).containsKeys(closed + "container.left", kept + "container.arrived");
    }
}
