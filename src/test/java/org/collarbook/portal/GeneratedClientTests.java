package org.collarbook.portal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import java.util.Objects;
import java.util.UUID;

import org.collarbook.access.CustomerId;
import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.web.client.HttpClientErrorException;

import client.ApiClient;
import client.api.PortalApi;

/**
 * The journey of a customer's web site, through a client that openapi-generator makes of {@code api/openapi.yaml}: what
 * does not fit the document does not compile here, or cannot be read.
 */
@RegisterTest
class GeneratedClientTests {

    private final Api api;
    private final Given given;
    private UUID customer = new UUID(0, 0);
    private UUID site = new UUID(0, 0);
    private UUID tank = new UUID(0, 0);

    GeneratedClientTests(Api api, Given given) {
        this.api = api;
        this.given = given;
    }

    @BeforeEach
    void aTankAtACustomers() {
        customer = given.customer();
        site = given.site(customer);
        tank = given.registered(PortalTank.body());
        given.moved(tank, site, "2026-11-20T09:00:00Z");
        api.as(Role.YARD).post("/api/readings", Map.of("containerId", tank, "percent", 42.5, "takenAt",
                "2026-11-24T09:00:00Z", "source", "TELEMETRY")).expect(201);
    }

    private PortalApi portalOf(UUID whose) {
        var client = new ApiClient();
        client.setBasePath(api.baseUrl());
        client.setBearerToken(api.portalKeyOf(new CustomerId(whose)));
        return new PortalApi(client);
    }

    @Test
    void walksFromTheListToTheTankAndItsSite() {
        var portal = portalOf(customer);
        var page = portal.getPortalContainers(null, null, null, null, null, null, null, null, null);
        assertThat(page.getItems()).singleElement().satisfies(first -> assertThat(first.getId()).isEqualTo(tank));
        var told = portal.getPortalContainersById(tank, null, null).getContainer();
        assertThat(told.getSerial()).isEqualTo(page.getItems().getFirst().getSerial());
        assertThat(told.getMeaning()).endsWith(".");
        var gauge = Objects.requireNonNull(told.getLastReading());
        assertThat(gauge.getPercent()).isEqualByComparingTo("42.5");
        assertThat(portal.getPortalSitesById(site, null).getId()).isEqualTo(site);
        assertThat(portal.getPortalSites(null, null, null).getItems()).hasSize(1);
    }

    @Test
    void anothersTankIsNotThere() {
        var portal = portalOf(given.customer());
        assertThatThrownBy(() -> portal.getPortalContainersById(tank, null, null))
                .isInstanceOfSatisfying(HttpClientErrorException.NotFound.class,
                        refused -> assertThat(refused.getResponseBodyAsString()).contains("\"code\":\"NOT_FOUND\"")
                                .doesNotContain(tank.toString()));
    }
}
