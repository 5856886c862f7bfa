package org.collarbook.compliance.declarations;

import java.util.List;
import java.util.UUID;

import org.collarbook.compliance.KnownContainer;
import org.collarbook.compliance.KnownContainers;
import org.collarbook.compliance.Requirements;
import org.collarbook.registry.DeclarableFact;
import org.collarbook.registry.Declaration;
import org.collarbook.registry.Declaring;
import org.collarbook.regulation.Facts;
import org.collarbook.regulation.RuleBook;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

import io.swagger.v3.oas.annotations.media.Schema;

/** What a declaration would do to each container of its group, by the same rules as when it is made; stores nothing. */
@Component
class PreviewDeclaration {

    private static final int CHUNK = 2000;

    private final JdbcClient jdbc;
    private final KnownContainers containers;
    private final Requirements requirements;
    private final RuleBook rules;

    PreviewDeclaration(JdbcClient jdbc, KnownContainers containers, Requirements requirements, RuleBook rules) {
        this.jdbc = jdbc;
        this.containers = containers;
        this.requirements = requirements;
        this.rules = rules;
    }

    @Schema(name = "DeclarationContradiction")
    record Contradiction(UUID container, List<String> facts) {}

    PreviewAnswer of(Declaration said, Group group) {
        var seen = new PreviewSums();
        var after = ApplyDeclaration.FIRST;
        for (var ids = next(group, after); !ids.isEmpty(); ids = next(group, after)) {
            for (var known : containers.byIds(ids)) {
                var declaring = ApplyDeclaration.declaring(said, known);
                var today = requirements.today(known);
                seen.add(known.id(), declaring, rules.assess(known.facts(), today),
                        rules.assess(then(known, declaring, said), today));
            }
            after = ids.getLast();
        }
        return seen.answer();
    }

    private List<UUID> next(Group group, UUID after) {
        return jdbc.sql("select c.id " + group.members() + " and c.id > :after order by c.id limit " + CHUNK)
                .params(group.parameters()).param("after", after).query(UUID.class).list();
    }

    private static Facts then(KnownContainer known, Declaring told, Declaration said) {
        var filled = told.after().particulars();
        var facts = known.facts().toBuilder().coated(filled.coated()).service(filled.service())
                .marksLegible(filled.marksLegible()).ownerConsent(filled.ownership().mayFill());
        return told.filled().contains(DeclarableFact.JURISDICTION)
                ? facts.jurisdiction(said.jurisdiction()).build()
                : facts.build();
    }
}
