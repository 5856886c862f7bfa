package org.collarbook.platform;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Isolation;
import org.springframework.transaction.annotation.Transactional;

/** Proves the chains: every hash follows from the one before it, and every entry says what its fact still says. */
@Component
public class JournalAudit {

    private final Journal journal;

    JournalAudit(Journal journal) {
        this.journal = journal;
    }

    /** What does not hold, and where; {@code seq} is 0 for a fact that is not in the chain. */
    public record Broken(UUID container, long seq, String kind, @Nullable UUID subject, String what) {}

    /** {@code next} is the last container looked at, or null when there are no more. */
    public record Found(int containers, long entries, List<Broken> broken, @Nullable UUID next) {}

    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Found of(UUID container) {
        return found(List.of(container), null);
    }

    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Found after(@Nullable UUID container, int atMost) {
        var ids = journal.after(container == null ? new UUID(0, 0) : container, atMost);
        return found(ids, ids.size() < atMost ? null : ids.getLast());
    }

    /** One chain from its first entry to its last; the hashes are null where there is none. */
    public record Chain(UUID container, long entries, @Nullable String firstHash, @Nullable String lastHash,
            List<Broken> broken) {

        public boolean isWhole() {
            return broken.isEmpty();
        }
    }

    /** The chain of each of these containers. */
    @Transactional(readOnly = true, isolation = Isolation.REPEATABLE_READ)
    public Map<UUID, Chain> chains(Collection<UUID> containers) {
        var entries = journal.chains(containers);
        var broken = broken(containers, entries).stream().collect(Collectors.groupingBy(Broken::container));
        var linked = entries.stream().collect(Collectors.groupingBy(JournalEntry::container));
        return containers.stream().distinct().collect(Collectors.toMap(id -> id, id -> chain(id,
                linked.getOrDefault(id, List.of()), broken.getOrDefault(id, List.of()))));
    }

    private static Chain chain(UUID container, List<JournalEntry> entries, List<Broken> broken) {
        return new Chain(container, entries.size(), entries.isEmpty() ? null : hex(entries.getFirst()),
                entries.isEmpty() ? null : hex(entries.getLast()), broken);
    }

    private static String hex(JournalEntry entry) {
        return HexFormat.of().formatHex(entry.hash());
    }

    private Found found(List<UUID> containers, @Nullable UUID next) {
        var entries = journal.chains(containers);
        return new Found(containers.size(), entries.size(), broken(containers, entries), next);
    }

    private List<Broken> broken(Collection<UUID> containers, List<JournalEntry> entries) {
        var heads = journal.heads(containers).stream()
                .collect(Collectors.toMap(Journal.Head::containerId, head -> head));
        var broken = new ArrayList<Broken>();
        var facts = new HashMap<String, JournalFact>();
        journal.facts(containers).forEach(fact -> facts.put(Journal.key(fact.kind(), fact.subject()), fact));
        var last = new HashMap<UUID, JournalEntry>();
        var versions = new HashMap<UUID, Long>();
        entries.stream().filter(entry -> JournalFact.isVersion(entry.kind()))
                .forEach(entry -> versions.merge(entry.container(), entry.seq(), Math::max));
        for (var entry : entries) {
            links(entry, last.get(entry.container()), broken);
            boolean replaced = JournalFact.isVersion(entry.kind()) && entry.seq() < versions.get(entry.container());
            if (!replaced) {
                saysTheSame(entry, facts.remove(Journal.key(entry.kind(), entry.subject())), broken);
            }
            last.put(entry.container(), entry);
        }
        containers.forEach(id -> ends(id, last.get(id), heads.get(id), broken));
        facts.values().forEach(fact -> broken.add(new Broken(fact.container(), 0, fact.kind(), fact.subject(),
                "this fact is not in the chain")));
        return broken;
    }

    private static void links(JournalEntry entry, @Nullable JournalEntry before, List<Broken> broken) {
        long expected = before == null ? 1 : before.seq() + 1;
        var previous = before == null ? JournalEntry.START : before.hash();
        if (entry.seq() != expected) {
            broken.add(broken(entry, "entry " + expected + " is missing"));
        } else if (!Arrays.equals(entry.previousHash(), previous)) {
            broken.add(broken(entry, "it does not follow the entry before it"));
        }
        if (!Arrays.equals(entry.hash(), entry.hashAfter(entry.previousHash()))) {
            broken.add(broken(entry, "the entry was altered: its hash is another"));
        }
    }

    private void saysTheSame(JournalEntry entry, @Nullable JournalFact fact, List<Broken> broken) {
        if (fact == null) {
            broken.add(broken(entry, "the fact is gone from its table"));
        } else if (!journal.text(fact).equals(entry.content()) || !fact.occurredAt().equals(entry.occurredAt())
                || !fact.recordedAt().equals(entry.recordedAt()) || !fact.recordedBy().equals(entry.recordedBy())) {
            broken.add(broken(entry, "the fact was altered in its table: it says " + journal.text(fact)
                    + ", and was entered as " + entry.content()));
        }
    }

    private static void ends(UUID container, @Nullable JournalEntry last, Journal.@Nullable Head head,
            List<Broken> broken) {
        boolean agree = last == null || head == null
                ? last == null && head == null
                : last.seq() == head.seq() && Arrays.equals(last.hash(), head.hash());
        if (!agree) {
            broken.add(new Broken(container, last == null ? 0 : last.seq(), "CHAIN", null,
                    "the end of the chain is not the one on record: entries were removed or added"));
        }
    }

    private static Broken broken(JournalEntry entry, String what) {
        return new Broken(entry.container(), entry.seq(), entry.kind(), entry.subject(), what);
    }
}
