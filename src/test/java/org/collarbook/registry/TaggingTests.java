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
class TaggingTests {

    private final Api.Session yard;
    private final Api.Session clerk;
    private final Api.Session filler;
    private final Tables tables;

    TaggingTests(Api api, Tables tables) {
        this.yard = api.as(Role.YARD);
        this.clerk = api.as(Role.CLERK);
        this.filler = api.as(Role.FILLER);
        this.tables = tables;
    }

    @Test
    void theOldTagIsFreeAndItsScanTellsWhoBoreIt() {
        var body = Given.cylinder();
        var old = Given.serial();
        body.put("tag", old);
        var created = clerk.post("/api/containers", body).expect(201);
        var fresh = Given.serial();

        var act = yard.ifMatch(created).post("/api/containers/" + created.id() + "/tags",
                Map.of("tag", fresh, "reason", "the old label was burnt")).expect(201);

        assertThat(act.text("/changes/0/was")).isEqualTo(old);
        assertThat(act.text("/changes/0/became")).isEqualTo(fresh);
        assertThat(act.etag()).isEqualTo("\"1\"");
        assertThat(filler.get("/api/fill-check?tag=" + fresh).expect(200).text("/container/id"))
                .isEqualTo(created.id());
        var former = filler.get("/api/fill-check?tag=" + old).expectProblem(404, "FORMER_TAG");
        assertThat(former.text("/formerly/0/container")).isEqualTo(created.id());
        assertThat(former.text("/formerly/0/reason")).isEqualTo("the old label was burnt");
        var told = filler.get("/api/tags?tag=" + old).expect(200);
        assertThat(told.at("/containerId").isMissingNode()).isTrue();
        assertThat(told.text("/formerly/0/container")).isEqualTo(created.id());

        // another one gets it, and is the one that its scan means from then on
        var other = Given.cylinder();
        other.put("tag", old);
        var second = clerk.post("/api/containers", other).expect(201);
        assertThat(filler.get("/api/fill-check?tag=" + old).expect(200).text("/container/id"))
                .isEqualTo(second.id());
        assertThat(filler.get("/api/tags?tag=" + old).text("/containerId")).isEqualTo(second.id());
        tables.unchangedBy(() -> assertThat(clerk.ifMatch(act)
                .post("/api/mark-corrections/" + act.id() + "/reversals", Map.of("reason", "not burnt"))
                .expectProblem(409, "TAG_IN_USE").text("/container/id")).isEqualTo(second.id()));
    }

    @Test
    void aLostTagIsTakenOffAndPutBack() {
        var body = Given.cylinder();
        var tag = Given.serial();
        body.put("tag", tag);
        var created = clerk.post("/api/containers", body).expect(201);
        var path = "/api/containers/" + created.id();

        var off = yard.ifMatch(created).post(path + "/tag-removals", Map.of("reason", "lost")).expect(201);
        assertThat(clerk.get(path).at("/tag").isMissingNode()).isTrue();
        tables.unchangedBy(() -> yard.ifMatch(off).post(path + "/tag-removals", Map.of("reason", "lost"))
                .expectProblem(409, "NOTHING_CHANGES"));

        var back = clerk.ifMatch(off).post("/api/mark-corrections/" + off.id() + "/reversals",
                Map.of("reason", "found under the collar")).expect(201);
        assertThat(back.text("/takesBack")).isEqualTo(off.id());
        assertThat(clerk.get(path).text("/tag")).isEqualTo(tag);
        assertThat(clerk.get("/api/audit/verification?container=" + created.id()).expect(200).at("/broken"))
                .isEmpty();
    }

    @Test
    void whatIsRefusedChangesNothing() {
        var first = Given.cylinder();
        first.put("tag", Given.serial());
        var bearer = clerk.post("/api/containers", first).expect(201);
        var created = clerk.post("/api/containers", Given.cylinder()).expect(201);
        var path = "/api/containers/" + created.id() + "/tags";
        Map<String, Object> taken = Map.of("tag", first.get("tag") + "", "reason", "re-tagged");

        tables.unchangedBy(() -> {
            assertThat(yard.ifMatch(created).post(path, taken).expectProblem(409, "TAG_IN_USE")
                    .text("/container/id")).isEqualTo(bearer.id());
            yard.post(path, taken).expectProblem(428, "IF_MATCH_REQUIRED");
            yard.with("If-Match", "\"9\"").post(path, taken).expectProblem(412, "STALE_VERSION");
            assertThat(yard.ifMatch(created).post(path, Map.of("tag", "(8004)")).expectProblem(400, "INVALID_INPUT")
                    .errors()).isEqualTo(Map.of("/tag", "INVALID_TAG", "/reason", "MISSING"));
            filler.ifMatch(created).post(path, taken).expectProblem(403, "FORBIDDEN");
            filler.get("/api/tags").expectProblem(400, "INVALID_INPUT");
        });
    }

    @Test
    void aRepeatedCommandTagsOnce() {
        var created = clerk.post("/api/containers", Given.cylinder()).expect(201);
        var once = yard.ifMatch(created).with("Idempotency-Key", Given.serial());
        var path = "/api/containers/" + created.id() + "/tags";
        Map<String, Object> request = Map.of("tag", Given.serial(), "reason", "tagged in the yard");

        var first = once.post(path, request).expect(201);
        tables.unchangedBy(() -> assertThat(once.post(path, request).expect(201).json()).isEqualTo(first.json()));
    }

    @Test
    void theIdentityOfARecordIsToldByPagesTheLatestFirst() {
        var body = Given.cylinder();
        var old = Given.serial();
        body.put("tag", old);
        var created = clerk.post("/api/containers", body).expect(201);
        var path = "/api/containers/" + created.id();
        var first = yard.ifMatch(created).post(path + "/tags", Map.of("tag", Given.serial(), "reason", "burnt"))
                .expect(201);
        var second = clerk.ifMatch(first).post(path + "/mark-corrections", Map.of("marks", Map.of("tare", "17.2 lb",
                "serial", Given.serial()), "reason", "read anew")).expect(201);

        var page = filler.get(path + "/identity?size=1").expect(200);
        assertThat(page.text("/formerTags/0/tag")).isEqualTo(old);
        assertThat(page.text("/items/0/correction/id")).isEqualTo(second.id());
        assertThat(page.at("/items/0/correction/changes")).hasSize(2);
        var next = filler.get(path + "/identity?size=1&cursor=" + page.text("/next")).expect(200);
        assertThat(next.text("/items/0/correction/id")).isEqualTo(first.id());
        assertThat(next.at("/next").isMissingNode()).isTrue();
        filler.get("/api/containers/00000000-0000-7000-8000-000000000000/identity").expectProblem(404, "NOT_FOUND");
    }
}
