package org.collarbook.schedule.packet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * What 49 CFR 180.215(b) and 180.209(g) have an inspector ask for, of a cylinder with a rich life: the packet says what
 * each of the other endpoints says.
 */
@RegisterTest
class ContainerPacketTests {

    private final Api api;
    private final Given given;
    private final JdbcClient owner;

    ContainerPacketTests(Api api, Given given, Flyway flyway) {
        this.api = api;
        this.given = given;
        this.owner = JdbcClient.create(flyway.getConfiguration().getDataSource());
    }

    private Answer get(String path) {
        return api.as(Role.CLERK).get(path).expect(200);
    }

    @Test
    void thePacketSaysWhatEachEndpointSays() {
        var life = RichLife.of(api, given);
        var packet = get(life.path("/audit-packet"));
        assertThat(packet.header("Cache-Control")).contains("no-store");
        assertThat(packet.at("/identity/container")).isEqualTo(get(life.path("")).json());
        assertThat(packet.at("/identity/formerTags")).hasSize(1)
                .isEqualTo(get(life.path("/identity")).at("/formerTags"));
        assertThat(packet.at("/identity/corrections/0"))
                .isEqualTo(get(life.path("/identity")).at("/items/0/correction"));
        assertThat(packet.at("/assessment")).isEqualTo(get(life.path("/assessment")).json());
        var tests = get(life.path("/requalifications?all=true")).at("/items");
        assertThat(packet.at("/requalifications")).hasSize(2).hasSameSizeAs(tests);
        for (int i = 0; i < tests.size(); i++) {
            assertThat(packet.at("/requalifications/" + i + "/requalification")).isEqualTo(tests.get(i));
        }
        assertThat(packet.at("/repairs")).hasSize(1).isEqualTo(get(life.path("/repairs?all=true")).at("/items"));
        assertThat(packet.at("/holds")).hasSize(3).isEqualTo(get(life.path("/holds")).at("/items"));
        assertThat(packet.at("/fills/last")).isEqualTo(get(life.path("/fills")).at("/items/0"));
        assertThat(packet.at("/parts")).hasSize(1).isEqualTo(get(life.path("/parts")).at("/items"));
        assertThat(packet.at("/placeDisputed")).hasSize(2).isEqualTo(get(life.path("")).at("/placeDisputed"));
        assertThat(packet.at("/place/site")).isEqualTo(get("/api/sites/" + life.depot()).json());
        assertThat(packet.text("/place/since")).isEqualTo("2026-04-20T09:00:00Z");
    }

    @Test
    void itTellsWhatNoOtherEndpointTells() {
        var life = RichLife.of(api, given);
        var packet = get(life.path("/audit-packet"));
        assertThat(packet.text("/identity/declarations/0/declaredBy")).isEqualTo("the yard foreman of the tests");
        assertThat(packet.at("/identity/declarations/0/facts").toString()).contains("coated", "marks_legible");
        // 180.215(b): until the period ends; twelve years after a volumetric test of 2026-11, 180.209(e)
        assertThat(packet.text("/kept/citation/section")).isEqualTo("180.215(b)");
        assertThat(packet.text("/requalifications/1/keepUntil")).isEqualTo("2038-11-30")
                .isEqualTo(packet.text("/assessment/requirements/0/lastDay"));
        assertThat(packet.at("/requalifications/0/keepUntil").isMissingNode()).isTrue();
        assertThat(packet.at("/fills/count").asInt()).isEqualTo(1);
        assertThat(packet.at("/fills/flagged").asInt()).isEqualTo(1);
        assertThat(packet.text("/fills/flags/0/reasons/0/code")).isEqualTo("ON_HOLD");
        assertThat(UUID.fromString(packet.text("/askedBy"))).isNotNull();
        assertThat(packet.text("/snapshotAt")).startsWith("2026-11-25");
        assertThat(packet.text("/caution")).contains("local codes");
    }

    @Test
    void itsProofIsThatOfTheChain() {
        var life = RichLife.of(api, given);
        var packet = get(life.path("/audit-packet"));
        var history = get(life.path("/history?size=1000")).at("/items");
        assertThat(packet.at("/proof/whole").asBoolean()).isTrue();
        assertThat(packet.at("/proof/chains")).hasSize(1);
        assertThat(packet.at("/proof/chains/0/entries").asInt()).isEqualTo(history.size())
                .isEqualTo(get("/api/audit/verification?container=" + life.id()).at("/entries").asInt());
        history.forEach(entry -> {
            if (entry.at("/seq").asInt() == 1) {
                assertThat(packet.text("/proof/chains/0/firstHash")).isEqualTo(entry.at("/hash").asString());
            }
            if (entry.at("/seq").asInt() == history.size()) {
                assertThat(packet.text("/proof/chains/0/lastHash")).isEqualTo(entry.at("/hash").asString());
            }
        });
    }

    @Test
    void anAlteredFactIsShownAsBroken() {
        var life = RichLife.of(api, given);
        assertThat(owner.sql("update hold set note = 'nothing' where container_id = ? and reason = 'DENTED'")
                .param(life.id()).update()).isEqualTo(1);
        var packet = get(life.path("/audit-packet"));
        assertThat(packet.at("/proof/whole").asBoolean()).isFalse();
        assertThat(packet.at("/proof/chains/0/broken"))
                .isEqualTo(get("/api/audit/verification?container=" + life.id()).at("/broken")).isNotEmpty();
        assertThat(pdf(life.path("/audit-packet")).text()).contains("verifiednowbroken", "thefactwasaltered");
    }

    private PacketOnPaper pdf(String path) {
        var answer = api.as(Role.CLERK).with("Accept", "application/pdf").get(path).expect(200);
        assertThat(answer.contentType()).startsWith("application/pdf");
        return PacketOnPaper.read(answer.bytes());
    }

    @Test
    void everyFactStandsOnPaper() throws IOException {
        var life = RichLife.of(api, given);
        var packet = get(life.path("/audit-packet"));
        var file = get(life.path("/audit-packet?format=pdf")).bytes();
        Files.write(Path.of("target/container-audit-packet.pdf"), file);
        var paper = PacketOnPaper.read(file);
        assertThat(PacketOnPaper.facts(packet.json())).hasSizeGreaterThan(100)
                .contains(life.rin().toLowerCase(Locale.ROOT), "o-ringblown", "2038-11",
                        packet.text("/proof/chains/0/lastHash"));
        assertThat(PacketOnPaper.facts(packet.json())).filteredOn(fact -> !paper.text().contains(fact)).isEmpty();
        var serial = PacketOnPaper.squeezed("serial " + packet.text("/identity/container/serial"));
        for (int page = 1; page <= paper.pages().size(); page++) {
            assertThat(paper.pages().get(page - 1)).contains(serial, "tagnew", life.id().toString(),
                    "page" + page + "of" + paper.pages().size());
        }
    }

    @Test
    void aMergedRecordIsPartOfTheOneThatCounts() {
        var life = RichLife.of(api, given);
        var other = given.registered(Given.cylinder());
        api.as(Role.YARD).post("/api/containers/" + other + "/holds", Map.of("reason", "CORRODED")).expect(201);
        var clerk = api.as(Role.CLERK);
        clerk.ifMatch(clerk.get(life.path(""))).post(life.path("/merges"), Map.of("absorbed", other, "setAside",
                List.of("serial", "manufactured", "maker"), "fillWillBeAllowed", true, "reason", "one cylinder"))
                .expect(201);
        for (var format : List.of("json", "pdf")) {
            assertThat(clerk.get("/api/containers/" + other + "/audit-packet?format=" + format)
                    .expectProblem(409, "MERGED").text("/container")).isEqualTo(life.id().toString());
        }
        var packet = get(life.path("/audit-packet"));
        assertThat(packet.text("/identity/mergedRecords/0/id")).isEqualTo(other.toString());
        assertThat(packet.text("/identity/acts/0/other")).isEqualTo(other.toString());
        assertThat(packet.at("/holds").findValuesAsString("reason")).contains("CORRODED", "DENTED");
        assertThat(packet.at("/proof/whole").asBoolean()).as(packet.at("/proof").toString()).isTrue();
        assertThat(packet.at("/proof/chains").findValuesAsString("container")).containsExactly(life.id().toString(),
                other.toString());
        var paper = pdf(life.path("/audit-packet"));
        assertThat(PacketOnPaper.facts(packet.at("/proof"))).filteredOn(fact -> !paper.text().contains(fact))
                .isEmpty();
    }

    @Test
    void whatIsNotKnownIsSaidSo() {
        var id = given.registered(new LinkedHashMap<>(Map.of("kind", "STATIONARY_TANK", "specification",
                "ASME", "serial", Given.serial())));
        api.as(Role.YARD).post("/api/containers/" + id + "/out-of-service", Map.of("since", "2026-11-02", "reason",
                "leg is bent")).expect(201);
        var packet = get("/api/containers/" + id + "/audit-packet");
        assertThat(packet.at("/place").isMissingNode()).isTrue();
        assertThat(packet.at("/outOfService")).isEqualTo(get("/api/containers/" + id + "/out-of-service").at("/items"));
        assertThat(packet.at("/fills/last").isMissingNode()).isTrue();
        assertThat(packet.text("/kept/citation/section")).isEqualTo("180.417(b)");
        var paper = pdf("/api/containers/" + id + "/audit-packet");
        assertThat(paper.text()).contains("sitenotknown", "from2026-11-02:legisbent;notreturned",
                "declarationnone:nofactrestsonone");
        assertThat(PacketOnPaper.facts(packet.json())).filteredOn(fact -> !paper.text().contains(fact)).isEmpty();
    }

    @Test
    void whatDoesNotExistAndWhatIsNoIdAreRefused() {
        var clerk = api.as(Role.CLERK);
        for (var format : List.of("json", "pdf")) {
            clerk.get("/api/containers/" + UUID.randomUUID() + "/audit-packet?format=" + format)
                    .expectProblem(404, "NOT_FOUND");
            clerk.get("/api/sites/" + UUID.randomUUID() + "/audit-packet?format=" + format)
                    .expectProblem(404, "NOT_FOUND");
            clerk.get("/api/containers/7/audit-packet?format=" + format).expectProblem(400, "INVALID_INPUT");
            clerk.get("/api/sites/7/audit-packet?format=" + format).expectProblem(400, "INVALID_INPUT");
        }
    }

    @ParameterizedTest
    @EnumSource(names = {"CLERK", "ADMINISTRATOR"}, mode = EnumSource.Mode.EXCLUDE)
    void onlyTheOfficeHandsItOut(Role role) {
        if (role != Role.PORTAL) {
            api.as(role).get("/api/containers/" + UUID.randomUUID() + "/audit-packet").expectProblem(403, "FORBIDDEN");
            api.as(role).get("/api/sites/" + UUID.randomUUID() + "/audit-packet").expectProblem(403, "FORBIDDEN");
        }
    }
}
