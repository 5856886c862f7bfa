package org.collarbook.portal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

import org.collarbook.testing.Answer;
import org.collarbook.testing.Api;

import tools.jackson.databind.JsonNode;

/** What a portal keeps of a customer's containers: read whole once, then by what changed. */
final class PortalCopy {

    private static final String LIST = "/api/portal/containers";

    private final Api.Session portal;
    private final Map<String, JsonNode> containers = new TreeMap<>();
    private String token = "";

    PortalCopy(Api.Session portal) {
        this.portal = portal;
    }

    static PortalCopy whole(Api.Session portal, int size) {
        var copy = new PortalCopy(portal);
        copy.read(LIST + "?size=" + size);
        return copy;
    }

    /** What was told: the ids of the new or changed, and of the removed. */
    record Told(Set<String> changed, Set<String> removed) {}

    Told follow(int size) {
        return read(LIST + "?size=" + size + "&since=" + token);
    }

    private Told read(String path) {
        var told = new Told(new HashSet<>(), new HashSet<>());
        String first = null;
        for (Answer page = portal.get(path).expect(200);; page = portal.get(next(page)).expect(200)) {
            first = first == null ? page.header("Since-Token") : first;
            page.at("/items").forEach(item -> {
                containers.put(item.at("/id").asString(), item);
                assertThat(told.changed.add(item.at("/id").asString())).isTrue();
            });
            page.at("/removed").forEach(id -> {
                containers.remove(id.asString());
                assertThat(told.removed.add(id.asString())).isTrue();
            });
            if (next(page) == null) {
                break;
            }
        }
        assertThat(first).isNotBlank();
        token = first;
        return told;
    }

    /** By the Link header alone, as RFC 8288 has it. */
    static String next(Answer page) {
        return page.headers().allValues("Link").stream().filter(link -> link.endsWith("; rel=\"next\""))
                .map(link -> link.substring(1, link.indexOf('>'))).findFirst().orElse(null);
    }

    String token() {
        return token;
    }

    Map<String, JsonNode> containers() {
        return containers;
    }
}
