package org.collarbook.dispatch.plans;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.TreeMap;
import java.util.TreeSet;

import org.collarbook.dispatch.plans.Chains.LeftOver;
import org.collarbook.platform.Sha256;
import org.jspecify.annotations.Nullable;

/** SHA-256 of a plan's input and of its result, line by line in their order: the same input has the same result. */
final class Hashes {

    private final MessageDigest digest = Sha256.start();

    private Hashes() {}

    static String of(PlanInput input) {
        var hash = new Hashes();
        hash.line(input.from(), input.through(), input.shop().perWeek());
        input.shop().weeks().forEach((week, capacity) -> hash.line("week", week, capacity));
        input.routes().forEach(route -> hash.line("route", route.id(), route.vehicle(), route.visits(), route.next(),
                new TreeSet<>(route.stops())));
        new TreeMap<>(input.racks())
                .forEach((rack, places) -> hash.line("rack", rack.vehicle(), rack.size(), places));
        input.cylinders().forEach(one -> hash.line("cylinder", one.id(), one.serial(), one.site(), one.size(),
                one.standing(), one.lastDay()));
        return hash.end();
    }

    static String of(List<PlanLine> lines, List<LeftOver> remainder) {
        var hash = new Hashes();
        lines.forEach(line -> hash.line(line.cylinder().id(), line.visit().day(), line.visit().route(), line.why()));
        remainder.forEach(left -> hash.line(left.cylinder().id(), left.reason(), left.firstVisit(), left.lastVisit()));
        return hash.end();
    }

    private void line(@Nullable Object... values) {
        for (var value : values) {
            digest.update(String.valueOf(value).getBytes(StandardCharsets.UTF_8));
            digest.update((byte) 0x1f);
        }
        digest.update((byte) '\n');
    }

    private String end() {
        return "sha256:" + HexFormat.of().formatHex(digest.digest());
    }
}
