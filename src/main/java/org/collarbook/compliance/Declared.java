package org.collarbook.compliance;

import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

import org.collarbook.registry.DeclarableFact;

import io.swagger.v3.oas.annotations.media.Schema;

/** Facts of an answer that rest on a person's word: whose, of which day, and in which declaration. */
@Schema(name = "RestingOnDeclaration")
public record Declared(UUID declaration, String by, LocalDate on, List<String> facts) {

    /** By declarations. Where a site tells whose rules govern, that rests on nobody's word. */
    public static List<Declared> of(KnownContainer known) {
        return known.declarers().stream()
                .map(one -> new Declared(one.declaration(), one.name(), one.declaredOn(), one.facts().stream()
                        .filter(fact -> fact != DeclarableFact.JURISDICTION || known.where() == null)
                        .map(DeclarableFact::word).toList()))
                .filter(one -> !one.facts.isEmpty()).toList();
    }
}
