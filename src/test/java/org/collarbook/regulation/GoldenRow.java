package org.collarbook.regulation;

import java.time.LocalDate;
import java.util.stream.Stream;

/** The published dates of both golden tables as questions to the rule book. */
public record GoldenRow(String id, Facts facts, LocalDate asOf) {

    public static Stream<GoldenRow> all() {
        return Stream.concat(Tsv.read("/golden/us.tsv").stream()
                .map(row -> new GoldenRow(row.get("id"), new GoldenFacts(row).facts(),
                        LocalDate.parse(row.get("as_of_rule_date")))),
                Tsv.read("/golden/world.tsv").stream().map(row -> {
                    WorldFacts world = new WorldFacts(row);
                    return new GoldenRow("world " + row.get("id"), world.facts(), world.asOf());
                }));
    }
}
