package org.collarbook.documents;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Matcher;

import org.collarbook.access.Role;
import org.collarbook.portal.TheirThings;
import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;
import org.collarbook.testing.Contract;
import org.collarbook.testing.Given;
import org.collarbook.testing.RegisterTest;
import org.junit.jupiter.api.Test;

import tools.jackson.databind.JsonNode;

/** What {@code api/openapi.yaml} says must be sent is what is missed when nothing is. */
@RegisterTest
class RequiredFieldsTests {

    private static final String SCHEMA = "/requestBody/content/application~1json/schema/$ref";
    /** Missed, and not required by themselves: another may take their place, or they are asked for by one operation only. */
    private static final Map<String, Set<String>> INSTEAD = Map.of("FillRequest", Set.of("tag", "grossLb"),
            "ReadingRequest", Set.of("tag"), "NoticeReplay", Set.of("noticeId"), "CorrectionRequest",
            Set.of("record"), "RepairCorrectionRequest", Set.of("record"), "ContainerRequest", Set.of("reason"));
    /** Required, and missed only once the rest can be read. */
    private static final Map<String, Set<String>> LATER = Map.of("NewKey", Set.of("roles"));

    private final Api api;
    private final Given given;

    RequiredFieldsTests(Api api, Given given) {
        this.api = api;
        this.given = given;
    }

    @Test
    void whatIsMissedIsRequired() {
        var theirs = TheirThings.of(api, given);
        var wrong = new ArrayList<String>();
        var checked = new TreeSet<String>();
        Contract.operations().forEach((pointer, operation) -> {
            var schema = operation.at(SCHEMA).asString("").replaceAll(".*/", "");
            var answer = schema.isEmpty() ? Optional.<Answer>empty() : answered(pointer, theirs.values());
            answer.ifPresent(told -> {
                checked.add(schema);
                var missed = missed(told);
                missed.removeAll(INSTEAD.getOrDefault(schema, Set.of()));
                missed.addAll(LATER.getOrDefault(schema, Set.of()));
                var required = required(Contract.schema(schema));
                if (!required.equals(missed)) {
                    wrong.add(schema + " requires " + required + ", and missed are " + missed);
                }
            });
        });
        assertThat(wrong).isEmpty();
        assertThat(checked).hasSizeGreaterThan(45);
    }

    private static TreeSet<String> required(JsonNode schema) {
        var required = new TreeSet<String>();
        schema.path("required").forEach(name -> required.add(name.asString()));
        return required;
    }

    private static TreeSet<String> missed(Answer answer) {
        var missed = new TreeSet<String>();
        answer.errors().forEach((pointer, code) -> {
            if (code.equals("MISSING")) {
                missed.add(pointer.split("/")[1]);
            }
        });
        return missed;
    }

    /** Of an empty body, where there is something under the path. */
    private Optional<Answer> answered(String pointer, Collection<String> ids) {
        var path = pointer.substring("/paths/".length(), pointer.lastIndexOf('/')).replace("~1", "/");
        var method = pointer.substring(pointer.lastIndexOf('/') + 1).toUpperCase(Locale.ROOT);
        return asked(path, ids).stream().map(one -> versioned(one).send(method, one, "{}"))
                .filter(answer -> answer.status() == 400 && answer.text("/code").equals("INVALID_INPUT")
                        && answer.errors().keySet().stream().allMatch(at -> at.startsWith("/")))
                .findFirst();
    }

    private static List<String> asked(String path, Collection<String> ids) {
        var asked = List.of(path.replace("{day}", "2026-12-24"));
        while (asked.getFirst().contains("{")) {
            asked = asked.stream().flatMap(one -> ids.stream().map(id -> one.replaceFirst("\\{[^}]+}",
                    Matcher.quoteReplacement(id.replace(" ", "%20"))))).toList();
        }
        return asked;
    }

    /** With the version that stands at the path, or above it. */
    private Api.Session versioned(String path) {
        var staff = api.as(Role.ADMINISTRATOR);
        var once = staff.with("Idempotency-Key", UUID.randomUUID().toString());
        for (var at : List.of(path, path.substring(0, path.lastIndexOf('/')))) {
            var read = staff.get(at);
            if (read.status() == 200 && read.headers().firstValue("ETag").isPresent()) {
                return once.ifMatch(read);
            }
        }
        return once;
    }
}
