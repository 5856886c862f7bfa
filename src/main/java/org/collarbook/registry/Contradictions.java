package org.collarbook.registry;

import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.ArrayList;

import org.collarbook.platform.Problem;

/** What a record that is to be absorbed says otherwise than the one that is kept; what it does not know is no matter. */
record Contradictions(List<Difference> fields) {

    Contradictions {
        fields = List.copyOf(fields);
    }

    static Contradictions between(RegisteredContainer kept, RegisteredContainer absorbed) {
        if (kept.marks().kind() != absorbed.marks().kind()) {
            throw Problem.conflict("KINDS_DIFFER", "A " + kept.marks().kind() + " and a " + absorbed.marks().kind()
                    + " are not one container. Nothing was stored: correct the one whose kind is wrong first.")
                    .asException();
        }
        var says = Described.comparable(kept.content());
        var fields = new ArrayList<Difference>();
        Described.comparable(absorbed.content()).forEach((field, said) -> {
            if (said != null && !Objects.equals(said, says.get(field))) {
                fields.add(new Difference(field, says.get(field), said));
            }
        });
        return new Contradictions(fields);
    }

    void refuseUnseen(Collection<String> setAside) {
        var unseen = fields.stream().filter(field -> !setAside.contains(field.field())).toList();
        if (!unseen.isEmpty()) {
            throw Problem.conflict("MARKS_CONTRADICT", "The record that is to be absorbed says otherwise of "
                    + String.join(", ", unseen.stream().map(Difference::field).toList())
                    + ". Nothing was stored: look at"
                    + " the container; what is wrong there is named in setAside, what is wrong here is corrected first.")
                    .with("contradictions", unseen).asException();
        }
    }
}
