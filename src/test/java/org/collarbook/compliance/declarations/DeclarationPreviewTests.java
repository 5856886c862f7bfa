package org.collarbook.compliance.declarations;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.UUID;

import org.collarbook.access.Role;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;

/** A look before tells what then happens, over random containers and declarations; the seed is the repetition. */
@RegisterTest
class DeclarationPreviewTests {

    private final Api.Session clerk;
    private final Given given;
    private final Tables tables;
    private final DeclaredFleet fleet;

    DeclarationPreviewTests(Api api, Given given, Tables tables) {
        this.clerk = api.as(Role.CLERK);
        this.given = given;
        this.tables = tables;
        this.fleet = new DeclaredFleet(api, given);
    }

    private static @Nullable Boolean any(Random random) {
        return switch (random.nextInt(5)) {
            case 0 -> false;
            case 1 -> true;
            default -> null;
        };
    }

    private UUID container(Random random, UUID site) {
        var service = new HashMap<String, @Nullable Object>();
        service.put("lading", random.nextInt(3) == 0 ? "LPG" : null);
        service.put("exclusive", any(random));
        service.put("corrosionFree", any(random));
        var owned = any(random);
        var id = fleet.registered(fleet.body("coated", any(random), "service", service, "owned", owned,
                "owner", Boolean.FALSE.equals(owned) ? "the farm" : null, "marksLegible", any(random),
                "manufactured", random.nextBoolean() ? "6-20" : "5-04"));
        if (random.nextBoolean()) {
            given.moved(id, site, "2026-11-20T09:00:00Z");
        }
        return id;
    }

    private static Map<String, Object> facts(Random random) {
        var facts = new HashMap<String, Object>(Map.of("coated", true));
        for (var fact : List.of("exclusive", "corrosionFree", "marksLegible", "owned", "ownerConsent")) {
            if (random.nextInt(4) > 0) {
                facts.put(fact, random.nextInt(6) > 0);
            }
        }
        facts.put("lading", "LPG");
        facts.put("jurisdiction", "US");
        return facts;
    }

    private Map<String, Integer> statuses(List<UUID> ids) {
        var statuses = new TreeMap<String, Integer>();
        ids.forEach(id -> statuses.merge(fleet.status(id), 1, Integer::sum));
        return statuses;
    }

    private long fillable(List<UUID> ids) {
        return ids.stream().filter(id -> fleet.assessment(id, "").at("/mayFill").asBoolean()).count();
    }

    private static Map<String, Integer> told(Answer answer, String at) {
        var told = new TreeMap<String, Integer>();
        answer.at(at).properties().forEach(one -> told.put(one.getKey(), one.getValue().asInt()));
        return told;
    }

    @RepeatedTest(4)
    void whatIsToldIsWhatHappens(RepetitionInfo repetition) {
        var random = new Random(repetition.getCurrentRepetition());
        var site = given.site(null);
        var ids = new ArrayList<UUID>();
        for (int i = 0; i < 40; i++) {
            ids.add(container(random, site));
        }
        var body = fleet.declaration(facts(random));
        var answer = new Answer[1];
        tables.unchangedBy(() -> answer[0] = clerk.post("/api/declarations/previews", body).expect(200));
        var preview = answer[0];
        assertThat(preview.at("/containers").asInt()).isEqualTo(40);
        assertThat(told(preview, "/statusBefore")).isEqualTo(statuses(ids));
        assertThat(preview.at("/fillable/before").asLong()).isEqualTo(fillable(ids));

        var declared = fleet.send("/api/declarations", body).expect(201);
        assertThat(DeclaredFleet.counts(declared, "/counts")).isEqualTo(DeclaredFleet.counts(preview, ""));
        assertThat(facts(declared)).isEqualTo(facts(preview)).isNotEmpty();
        assertThat(declared.at("/contradictions/items")).isEqualTo(preview.at("/contradictions"));
        assertThat(told(preview, "/statusAfter")).isEqualTo(statuses(ids)).isNotEqualTo(told(preview, "/statusBefore"));
        assertThat(preview.at("/fillable/after").asLong()).isEqualTo(fillable(ids));
        assertThat(preview.text("/caution")).isNotEmpty();
    }

    private static Map<String, String> facts(Answer answer) {
        var facts = new TreeMap<String, String>();
        answer.at("/facts").forEach(fact -> facts.put(fact.at("/fact").asString(), fact.at("/filled").asInt() + "/"
                + fact.at("/known").asInt() + "/" + fact.at("/contradicting").asInt()));
        return facts;
    }
}
