package org.collarbook.regulation.rulebook;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.collarbook.regulation.ReasonCode;
import org.collarbook.regulation.Requirement;
import org.collarbook.regulation.engine.Part;
import org.collarbook.regulation.engine.Part.Allows;

/** Reads what a rule does: exactly one of these keys says so. */
final class PartReader {

    private static final List<String> KEYS = List.of("sets", "gates", "limits", "relieves", "notes", "cites",
            "expects");

    private PartReader() {}

    static Part read(Fields fields) {
        List<String> found = KEYS.stream().filter(fields::has).toList();
        if (found.size() != 1) {
            throw new RuleBookException(fields.path(), "expected exactly one of " + KEYS + ", found " + found);
        }
        return switch (found.getFirst()) {
            case "sets" -> new Part.Sets(fields.choice("sets", Requirement.class),
                    allows(fields, "bars", EnumSet.allOf(Allows.class)));
            case "gates" -> new Part.Asks(fields.choice("gates", Part.Topic.class),
                    allows(fields, "forbids", EnumSet.of(Allows.FILL)),
                    allows(fields, "unknownForbids", EnumSet.of(Allows.FILL)));
            case "relieves" -> new Part.Relieves(fields.choice("relieves", Part.Relief.class),
                    allows(fields, "allows", EnumSet.noneOf(Allows.class)));
            case "notes" -> new Part.Notes(fields.choice("notes", ReasonCode.class),
                    fields.choice("about", Requirement.class));
            case "cites" -> new Part.Cites(fields.choices("cites", ReasonCode.class));
            case "expects" -> new Part.Expects(fields.choice("expects", Part.Equipment.class));
            default -> limits(fields);
        };
    }

    private static Part limits(Fields fields) {
        if (!fields.text("limits").equals("FILLING_DENSITY")) {
            throw fields.wrong("limits", "expected FILLING_DENSITY");
        }
        return new Part.Limits();
    }

    private static Set<Allows> allows(Fields fields, String key, Set<Allows> otherwise) {
        Set<Allows> told = fields.choices(key, Allows.class);
        return told.isEmpty() ? otherwise : told;
    }
}
