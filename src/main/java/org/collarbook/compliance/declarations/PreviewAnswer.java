package org.collarbook.compliance.declarations;

import java.util.List;
import java.util.Map;

import org.collarbook.compliance.declarations.DeclarationAnswer.FactCounts;
import org.collarbook.compliance.declarations.PreviewDeclaration.Contradiction;

import io.swagger.v3.oas.annotations.media.Schema;

/**
 * What a declaration would do, of the containers of its group: how many it would fill anything of, how many know something
 * of it already, and how many say otherwise and keep what they have, of which the first are listed; of {@code untouched} it
 * says nothing, since they were made after its day. {@code fillable}: how many the rules let be filled before and after,
 * before anybody has looked at one.
 */
@Schema(name = "DeclarationPreview")
record PreviewAnswer(int containers, int filled, int known, int contradicting, int untouched, List<FactCounts> facts,
        Fillable fillable, Map<String, Integer> statusBefore, Map<String, Integer> statusAfter,
        List<Contradiction> contradictions, String caution) {

    @Schema(name = "FillableByDeclaration")
    record Fillable(int before, int after) {}
}
