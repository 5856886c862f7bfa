package org.collarbook.regulation.rulebook;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.collarbook.regulation.Basis;
import org.collarbook.regulation.Citation;
import org.jspecify.annotations.Nullable;

/** Completes the citation inside a value with the edition that the file's {@code sources} describe once. */
final class CitationReader {

    private static final List<String> OF_SOURCE = List.of("instrument", "edition", "published", "url", "retrieved",
            "lastConfirmed");

    private final Map<String, Map<String, Object>> sources = new HashMap<>();

    CitationReader(Fields sources) {
        for (String name : sources.keys()) {
            Fields source = sources.child(name);
            Map<String, Object> fields = new HashMap<>();
            for (String key : OF_SOURCE) {
                if (!source.has(key)) {
                    throw source.wrong(key, "missing");
                }
                String text = source.optional(key);
                if (text != null) {
                    fields.put(key, text);
                }
            }
            source.done();
            this.sources.put(name, fields);
        }
    }

    Citation read(Fields citation) {
        String name = citation.text("source");
        Map<String, Object> source = sources.get(name);
        if (source == null) {
            throw citation.wrong("source", "found '" + name + "', expected one of " + sources.keySet());
        }
        Fields edition = new Fields(citation.path() + "<" + name + ">", source);
        LocalDate published = edition.optional("published", "a date, or none", CitationReader::dateOrNone);
        Citation read = new Citation(edition.text("instrument"), citation.text("section"), edition.text("edition"),
                citation
                        .date("inForceFrom"),
                published, edition.text("url"), edition.date("retrieved"), edition.date(
                        "lastConfirmed"),
                citation.choice("basis", Basis.class));
        citation.done();
        return read;
    }

    private static @Nullable LocalDate dateOrNone(String text) {
        return text.equals("none") ? null : LocalDate.parse(text);
    }
}
