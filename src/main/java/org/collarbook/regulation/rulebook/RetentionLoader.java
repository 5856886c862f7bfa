package org.collarbook.regulation.rulebook;

import java.time.Period;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.Retention;
import org.collarbook.regulation.Retention.Kept;
import org.collarbook.regulation.Retention.RecordKind;

/** Reads how long records are kept; every kind of record has one row. */
public final class RetentionLoader {

    private static final String FILE = "retention.yaml";

    private RetentionLoader() {}

    public static Retention standard() {
        return of(RuleBookLoader.resource(FILE));
    }

    static Retention of(String text) {
        Fields file = new Fields(FILE, Yaml.read(FILE, text));
        CitationReader citations = new CitationReader(file.child("sources"));
        List<Kept> records = new ArrayList<>();
        Set<RecordKind> missing = EnumSet.allOf(RecordKind.class);
        for (Fields row : file.children("records")) {
            RecordKind record = row.choice("record", RecordKind.class);
            if (!missing.remove(record)) {
                throw row.wrong("record", "found " + record + " twice");
            }
            Fields citation = row.optionalChild("citation");
            records.add(new Kept(record, row.optional("keep", "a period such as P15Y", Period::parse),
                    row.text("until"), citation == null ? null : citations.read(citation)));
            row.done();
        }
        file.done();
        if (!missing.isEmpty()) {
            throw new RuleBookException(FILE, "nothing is said of " + missing);
        }
        return new Retention(records);
    }
}
