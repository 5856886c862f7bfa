package org.collarbook.intake.scans;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

import org.collarbook.access.Caller;
import org.collarbook.platform.FieldError;
import org.collarbook.platform.Idempotency;
import org.jspecify.annotations.Nullable;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.dao.DataAccessException;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Takes a batch in, in the order in which its lines happened, piece by piece: what was settled before the service was
 * killed is there, and the same batch sent again settles the rest.
 */
@Component
class ScanBatches {

    private static final int PIECE = 200;
    private static final int ATTEMPTS = 3;

    private final LineReader reader;
    private final ScanLines lines;
    private final SettlePiece settlePiece;
    private final Idempotency idempotency;
    private final TransactionTemplate transaction;

    ScanBatches(LineReader reader, ScanLines lines, SettlePiece settlePiece, Idempotency idempotency,
            TransactionTemplate transaction) {
        this.reader = reader;
        this.lines = lines;
        this.settlePiece = settlePiece;
        this.idempotency = idempotency;
        this.transaction = transaction;
    }

    record Taken(ScanBatchAnswer answer, boolean fresh) {}

    Taken take(ScanBatchRequest request, @Nullable String key, Caller by) {
        var content = request.read();
        var opened = transaction.execute(_ -> {
            idempotency.claim(key, by.id(), "POST /api/scan-batches", request);
            return lines.open(content.name(), by.id());
        });
        var answers = new @Nullable ObjectNode[content.lines().size()];
        var read = new ArrayList<ReadLine>(answers.length);
        for (var sent : content.lines()) {
            read.add(reader.read(read.size(), sent));
        }
        var again = new HashMap<ReadLine, ReadLine>();
        var settled = new ArrayList<>(once(read, again, answers));
        settled.sort(Comparator.comparing(ReadLine::at).thenComparing(ReadLine::position));
        for (int from = 0; from < settled.size(); from += PIECE) {
            settle(opened.id(), settled.subList(from, Math.min(from + PIECE, settled.size())), by)
                    .forEach((place, answer) -> answers[place] = answer);
        }
        again.forEach((line, first) -> answers[line.position()] = SettlePiece
                .repeated(Objects.requireNonNull(answers[first.position()])));
        return new Taken(ScanBatchAnswer.of(opened.id(), content.name(), List.<JsonNode>of(answers)), opened.fresh());
    }

    /** Those that bear an id that no line sent before them bears; the others are answered here, or {@code again}. */
    private List<ReadLine> once(List<ReadLine> read, Map<ReadLine, ReadLine> again, @Nullable ObjectNode[] answers) {
        var byId = new HashMap<String, ReadLine>();
        var once = new ArrayList<ReadLine>();
        for (var line : read) {
            var id = line.id();
            var first = id == null ? null : byId.putIfAbsent(id, line);
            if (id == null) {
                answers[line.position()] = settlePiece.node(unreadable(line));
            } else if (first == null) {
                once.add(line);
            } else if (Arrays.equals(first.content(), line.content())) {
                again.put(line, first);
            } else {
                answers[line.position()] = settlePiece.node(SettlePiece.reused(line));
            }
        }
        return once;
    }

    private static LineAnswer unreadable(ReadLine line) {
        return switch (line.told()) {
            case ReadLine.Unreadable(var errors) -> Refusals.of(line, errors);
            case ReadLine.Line _ -> throw new IllegalStateException("a line without an id was read");
        };
    }

    /** What the database refuses in one line does not stop the others: each is then tried by itself. */
    private Map<Integer, ObjectNode> settle(UUID batch, List<ReadLine> piece, Caller by) {
        try {
            return settlePiece.settle(batch, piece, by);
        } catch (DataAccessException refused) {
            var answers = new HashMap<Integer, ObjectNode>();
            piece.forEach(line -> answers.putAll(alone(batch, line, by)));
            return answers;
        }
    }

    private Map<Integer, ObjectNode> alone(UUID batch, ReadLine line, Caller by) {
        for (int attempt = 1;; attempt++) {
            try {
                return settlePiece.settle(batch, List.of(line), by);
            } catch (ConcurrencyFailureException raced) {
                if (attempt == ATTEMPTS) {
                    throw raced;
                }
            } catch (DataIntegrityViolationException refused) {
                var refusal = Refusals.of(line, new FieldError("", "CONSTRAINT", null,
                        "what does not contradict what is recorded"));
                return Map.of(line.position(), settlePiece.refuse(batch, line, refusal, by));
            }
        }
    }
}
