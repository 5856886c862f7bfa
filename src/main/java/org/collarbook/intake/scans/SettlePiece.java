package org.collarbook.intake.scans;

import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.compliance.Changes;
import org.collarbook.platform.FieldError;
import org.collarbook.platform.ProblemException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * Settles some lines in one transaction: what they record, the chains and due months that follow, and what became of each
 * line are committed together, so that a line is either settled or was never there.
 */
@Component
class SettlePiece {

    private final ScanLines lines;
    private final NamedContainers containers;
    private final RecordLine recordLine;
    private final Changes changes;
    private final JdbcClient jdbc;
    private final JsonMapper json;

    SettlePiece(ScanLines lines, NamedContainers containers, RecordLine recordLine, Changes changes, JdbcClient jdbc,
            JsonMapper json) {
        this.lines = lines;
        this.containers = containers;
        this.recordLine = recordLine;
        this.changes = changes;
        this.jdbc = jdbc;
        this.json = json;
    }

    /** The answers by the place of each line in its batch. The lines bear ids, each another, and come as they happened. */
    @Transactional
    public Map<Integer, ObjectNode> settle(UUID batch, List<ReadLine> piece, Caller by) {
        lines.lock(by.id());
        var recorded = lines.recorded(by.id(), piece);
        var answers = new HashMap<Integer, ObjectNode>();
        var fresh = new ArrayList<ReadLine>();
        for (var line : piece) {
            var before = recorded.get(line.id());
            if (before == null) {
                fresh.add(line);
            } else {
                answers.put(line.position(), again(line, before));
            }
        }
        var outcomes = record(fresh, by);
        lines.store(batch, by.id(), outcomes);
        outcomes.forEach(one -> answers.put(one.line().position(), node(one.answer())));
        return answers;
    }

    /** Notes a refusal that the database gave, when nothing of the line could be kept. */
    @Transactional
    public ObjectNode refuse(UUID batch, ReadLine line, LineAnswer refusal, Caller by) {
        lines.lock(by.id());
        lines.store(batch, by.id(), List.of(outcome(line, refusal)));
        return node(refusal);
    }

    ObjectNode node(LineAnswer answer) {
        return json.valueToTree(answer);
    }

    static LineAnswer reused(ReadLine line) {
        return Refusals.of(line, new FieldError("/id", "ID_REUSED", line.id(),
                "an id of its own: another line was sent under this one"));
    }

    private ObjectNode again(ReadLine line, ScanLines.Recorded before) {
        return MessageDigest.isEqual(before.content(), line.content())
                ? repeated((ObjectNode) json.readTree(before.answer()))
                : node(reused(line));
    }

    /** The first answer, marked. */
    static ObjectNode repeated(ObjectNode answer) {
        var repeated = answer.deepCopy();
        var first = repeated.get("outcome").stringValue();
        if (!first.equals(LineAnswer.Outcome.REPEATED.name()) && !first.equals(LineAnswer.Outcome.REFUSED.name())) {
            repeated.put("outcome", LineAnswer.Outcome.REPEATED.name()).put("first", first);
        }
        return repeated;
    }

    private List<ScanLines.Outcome> record(List<ReadLine> fresh, Caller by) {
        var readable = new HashMap<Integer, ReadLine.Line>();
        fresh.forEach(line -> {
            if (line.told() instanceof ReadLine.Line told) {
                readable.put(line.position(), told);
            }
        });
        var named = containers.lock(readable);
        var outcomes = new ArrayList<ScanLines.Outcome>();
        changes.together(() -> fresh.forEach(line -> outcomes.add(outcome(line, switch (line.told()) {
            case ReadLine.Unreadable(var errors) -> Refusals.of(line, errors);
            case ReadLine.Line told -> settled(line, told, Objects.requireNonNull(named.get(line.position())), by);
        }))));
        return outcomes;
    }

    private LineAnswer settled(ReadLine line, ReadLine.Line told, Map<String, NamedContainers.Named> named,
            Caller by) {
        var errors = new ArrayList<FieldError>();
        var found = new HashMap<String, UUID>();
        named.forEach((pointer, one) -> {
            switch (one) {
                case NamedContainers.Named.NotFound(var error) -> errors.add(error);
                case NamedContainers.Named.Found(var container) -> found.put(pointer, container);
            }
        });
        return errors.isEmpty() ? recorded(line, told, found, by) : Refusals.of(line, errors);
    }

    /** A line that is refused leaves nothing, whatever it had recorded before it was. */
    private LineAnswer recorded(ReadLine line, ReadLine.Line told, Map<String, UUID> containers, Caller by) {
        jdbc.sql("savepoint line").update();
        try {
            var answer = recordLine.record(String.valueOf(line.id()), told, containers, by);
            jdbc.sql("release savepoint line").update();
            return answer;
        } catch (ProblemException refused) {
            jdbc.sql("rollback to savepoint line").update();
            jdbc.sql("release savepoint line").update();
            return Refusals.of(line, refused.problem());
        }
    }

    private ScanLines.Outcome outcome(ReadLine line, LineAnswer answer) {
        return new ScanLines.Outcome(line, answer, json.writeValueAsString(answer));
    }
}
