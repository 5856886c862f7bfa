package org.collarbook.compliance.rules;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;

import tools.jackson.databind.JsonNode;

/** 49 CFR 180.215 (fifteen years), 173.315(j)(2) (two years) and 172.704(d) (90 days after employment). */
@RegisterTest
class RetentionTests {

    private final Api api;

    RetentionTests(Api api) {
        this.api = api;
    }

    @Test
    void everyKindOfRecordTellsHowLongItIsKeptAndWhereThatStands() {
        var answer = api.as(Role.FILLER).get("/api/retention").expect(200);
        var records = new HashMap<String, JsonNode>();
        answer.at("/records").forEach(one -> records.put(one.at("/record").asString(), one));
        assertThat(records.get("REPAIR").at("/keep").asString()).isEqualTo("P15Y");
        assertThat(records.get("REPAIR").at("/citation/section").asString()).isEqualTo("180.215");
        assertThat(records.get("TRANSPORT").at("/keep").asString()).isEqualTo("P2Y");
        assertThat(records.get("TRAINING").at("/until").asString()).contains("90 days");
        assertThat(records.get("TRAINING").at("/citation/basis").asString()).isEqualTo("QUOTED");
        assertThat(records.get("FILL").at("/citation").isMissingNode()).as("no regulation was found").isTrue();
        assertThat(answer.text("/note")).contains("deletes nothing");
    }
}
