package org.collarbook.intake;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** 49 CFR 173.301(e): only the owner, or somebody with that owner's consent, may fill a cylinder. */
@RegisterTest
class OwnerTests {

    private final Api api;
    private final Given given;

    OwnerTests(Api api, Given given) {
        this.api = api;
        this.given = given;
    }

    @ParameterizedTest
    @CsvSource({"Old Mill, true", "New Orchard, false"})
    void consentDoesNotPassToTheNextOwner(String owner, boolean consentStays) {
        var body = Given.cylinder();
        body.putAll(Map.of("owned", false, "owner", "Old Mill", "ownerConsent", true));
        UUID id = given.registered(body);
        var ledger = "specification,maker,serial,manufactured,owner\nDOT-4BA240,QX," + body.get("serial") + ",5-04,"
                + owner + "\n";
        var checked = Ledger.checked(api, ledger, null);
        Ledger.committed(api, checked, "ABORT");
        var container = api.as(Role.CLERK).get("/api/containers/" + id).expect(200);
        assertThat(container.text("/owner")).isEqualTo(owner);
        assertThat(container.at("/ownerConsent").asBoolean(false)).isEqualTo(consentStays);
    }
}
