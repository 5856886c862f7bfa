package org.collarbook.schedule.packet;

import java.util.ArrayList;

import org.collarbook.compliance.assessment.AssessmentAnswer;
import org.collarbook.compliance.assessment.AssessmentAnswer.RequirementAnswer;

/** What the rules say of a container, on paper. */
record AssessmentTables(PacketTables tables) {

    void write(AssessmentAnswer said) {
        var clocks = tables.columns("What is due, as of " + said.asOf(), new float[]{90, 100, 350}, "Clock", "Due",
                "Rule and facts it rests on");
        said.requirements().forEach(clock -> clocks.row(name(clock), due(clock), rule(clock) + "\nfacts used: "
                + String.join(", ", clock.facts())));
        clocks.end();
        var permissions = tables.columns("Permissions, as of " + said.asOf(), new float[]{110, 60, 370}, "May it be",
                "Answer", "Reasons");
        said.permissions().forEach((may, answer) -> permissions.row(
                PacketWords.plain(may.replaceAll("([A-Z])", "_$1")), PacketWords.yes(answer.allowed()),
                answer.reasons().isEmpty()
                        ? "nothing stands against it"
                        : answer.reasons().toString()
                                .replaceAll("[\\[\\]]", "")));
        permissions.end();
        var reasons = tables.columns("Reasons, with where each stands", new float[]{130, 410}, "Code", "Reason");
        if (said.reasons().isEmpty()) {
            reasons.row("none", "nothing is to be said beside the clocks");
        }
        said.reasons().forEach(reason -> reasons.row(reason.code(), reason.text() + (reason.citation() == null
                ? ""
                : "\n" + PacketWords.cited(reason.citation()))));
        reasons.end();
    }

    static String name(RequirementAnswer clock) {
        return PacketWords.plain(clock.requirement()) + (clock.jurisdiction() == null
                ? ""
                : " (" + clock.jurisdiction() + ")");
    }

    static String due(RequirementAnswer clock) {
        var lines = new ArrayList<String>();
        if (clock.due() == null) {
            lines.add(PacketWords.plain(clock.outcome()));
        } else {
            lines.add(clock.due().toString());
            lines.add("last day " + clock.lastDay());
        }
        lines.add(PacketWords.plain(clock.status()));
        if (clock.since() != null) {
            lines.add("since " + clock.since());
        }
        if (clock.authority() != null) {
            lines.add("authority: " + clock.authority());
        }
        if (clock.missing() != null) {
            lines.add(PacketWords.plain(clock.missing()));
        }
        return String.join("\n", lines);
    }

    static String rule(RequirementAnswer clock) {
        return clock.rule() == null
                ? "no rule is held that answers"
                : clock.rule() + "\n" + PacketWords.cited(clock.citation());
    }
}
