package org.collarbook.schedule.packet;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.intake.Ledger;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.SentStatements;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;

import tools.jackson.databind.JsonNode;

/** The packet of a site: a line for each container says what the container's own packet says. */
@RegisterTest
class SitePacketTests {

    private final Api api;
    private final Given given;
    private final JdbcClient owner;

    SitePacketTests(Api api, Given given, Flyway flyway) {
        this.api = api;
        this.given = given;
        this.owner = JdbcClient.create(flyway.getConfiguration().getDataSource());
    }

    private Answer get(String path) {
        return api.as(Role.CLERK).get(path).expect(200);
    }

    private static String packetOf(UUID site) {
        return "/api/sites/" + site + "/audit-packet";
    }

    private UUID siteOf(int containers) {
        var site = given.site(given.customer());
        for (int i = 0; i < containers; i++) {
            given.moved(given.registered(), site, "2026-11-20T09:00:00Z");
        }
        return site;
    }

    @Test
    void eachLineSaysWhatTheContainersOwnPacketSays() throws IOException {
        var life = RichLife.of(api, given);
        given.moved(given.registered(), life.depot(), "2026-11-20T09:00:00Z");
        var packet = get(packetOf(life.depot()));
        assertThat(packet.at("/site")).isEqualTo(get("/api/sites/" + life.depot()).json());
        assertThat(packet.at("/count").asInt()).isEqualTo(2);
        packet.at("/containers").forEach(line -> {
            var own = get("/api/containers/" + line.at("/id").asString() + "/audit-packet");
            assertThat(line.at("/serial")).isEqualTo(own.at("/identity/container/serial"));
            assertThat(line.at("/status")).isEqualTo(own.at("/assessment/status"));
            assertThat(line.at("/requirements")).isEqualTo(own.at("/assessment/requirements"));
            assertThat(line.at("/since")).isEqualTo(own.at("/place/since"));
            assertThat(line.at("/chainWhole")).isEqualTo(own.at("/proof/whole"));
            assertThat(line.at("/chainEntries").asInt()).isEqualTo(own.at("/proof/chains/0/entries").asInt());
        });
        var rich = line(packet, life.id());
        assertThat(rich.at("/requalified/month").asString()).isEqualTo("2026-11");
        assertThat(rich.at("/requalified/method").asString()).isEqualTo("VOLUMETRIC_EXPANSION");
        assertThat(rich.at("/requalified/rin").asString()).isEqualTo(life.rin());
        assertThat(packet.at("/placeDisputed/0/containerId").asString()).isEqualTo(life.id().toString());
        assertThat(packet.at("/extinguishers"))
                .isEqualTo(get("/api/sites/" + life.depot() + "/requirements").json());
        var file = get(packetOf(life.depot()) + "?format=pdf").bytes();
        Files.write(Path.of("target/site-audit-packet.pdf"), file);
        var paper = PacketOnPaper.read(file);
        packet.at("/containers").forEach(line -> assertThat(paper.text()).contains(
                PacketOnPaper.squeezed(line.at("/serial").asString()), line.at("/requirements/0/due").asString(),
                line.at("/requirements/0/rule").asString()));
        assertThat(paper.text()).contains("rin" + PacketOnPaper.squeezed(life.rin()), "allwhole", "180.209(e)");
        assertThat(paper.pages()).allSatisfy(page -> assertThat(page).contains(life.depot().toString()));
    }

    private static JsonNode line(Answer packet, UUID id) {
        for (var line : packet.at("/containers")) {
            if (line.at("/id").asString().equals(id.toString())) {
                return line;
            }
        }
        throw new AssertionError(id + " is not among them: " + packet);
    }

    @Test
    void aBrokenChainIsMarkedOnItsLineAlone() {
        var site = siteOf(2);
        var one = UUID.fromString(get(packetOf(site)).text("/containers/0/id"));
        assertThat(owner.sql("update movement set occurred_at = occurred_at + interval '1 day' where container_id = ?")
                .param(one).update()).isEqualTo(1);
        var packet = get(packetOf(site));
        assertThat(packet.at("/whole").asBoolean()).isFalse();
        packet.at("/containers").forEach(line -> assertThat(line.at("/chainWhole").asBoolean())
                .isEqualTo(!line.at("/id").asString().equals(one.toString())));
        assertThat(PacketOnPaper.read(get(packetOf(site) + "?format=pdf").bytes()).text())
                .contains("brokenfor1ofthecontainers", "chainbroken,2entries", "chainwhole,2entries");
    }

    @Test
    void thirtyContainersTakeAsManyStatementsAsThree() {
        long few = statements(siteOf(3));
        assertThat(statements(siteOf(30))).isEqualTo(few).isLessThanOrEqualTo(16);
    }

    private long statements(UUID site) {
        get(packetOf(site));
        try (var sent = SentStatements.byTheRequest()) {
            get(packetOf(site));
            return sent.count();
        }
    }

    @Test
    void anEmptySiteHasAPacketToo() {
        var packet = get(packetOf(siteOf(0)));
        assertThat(packet.at("/count").asInt()).isZero();
        assertThat(packet.at("/whole").asBoolean()).isTrue();
    }

    @Test
    void twoThousandContainersAreToldAndNotOneMore() throws IOException {
        var code = "F" + Given.serial();
        var ledger = new Ledger();
        for (int i = 0; i < SitePackets.MOST; i++) {
            ledger.row("site", code, "site_kind", "DEPOT");
        }
        ledger.load(api, Ledger.declaration());
        var site = UUID.fromString(owner.sql("select id from site where code = ?").param(code).query(String.class)
                .single());
        var packet = get(packetOf(site));
        assertThat(packet.at("/count").asInt()).isEqualTo(SitePackets.MOST);
        assertThat(packet.at("/whole").asBoolean()).isTrue();
        var file = get(packetOf(site) + "?format=pdf").bytes();
        Files.write(Path.of("target/large-site-audit-packet.pdf"), file);
        var paper = PacketOnPaper.read(file).text();
        assertThat(packet.at("/containers")).allSatisfy(one -> assertThat(paper)
                .contains(PacketOnPaper.squeezed(one.at("/serial").asString())));
        given.moved(given.registered(), site, "2026-11-24T09:00:00Z");
        assertThat(api.as(Role.CLERK).get(packetOf(site)).expectProblem(422, "LIST_TOO_LONG").text("/detail"))
                .contains("2000", "/api/schedule?site=" + site);
        api.as(Role.CLERK).get(packetOf(site) + "?format=pdf").expectProblem(422, "LIST_TOO_LONG");
    }
}
