package org.collarbook.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

import org.collarbook.intake.Claims.Claim;
import org.collarbook.registry.NaturalKey;
import org.collarbook.registry.RegisteredContainer;
import org.jspecify.annotations.Nullable;

/**
 * Which rows of a batch cannot be taken because they could mean more than one container, of the register or of earlier
 * rows. Marks tell a container only as far as they are known: where the maker or the month is left out, on the row or in
 * the register, all that is alike in the rest may be the one. Nothing is guessed, and what is not taken casts no doubt on
 * later rows.
 */
final class Doubts {

    private final Known known;
    private final Map<NaturalKey, List<RegisteredContainer>> registered;
    private final Map<UUID, List<Claim>> earlier;
    private final List<Claim> claimed = new ArrayList<>();

    Doubts(Known known, Map<UUID, List<Claim>> earlier) {
        this.known = known;
        this.earlier = new HashMap<>(earlier);
        this.registered = known.containers().values().stream().filter(one -> !known.closed().contains(one.id()))
                .collect(Collectors.groupingBy(one -> withoutMakerAndMonth(one.marks().naturalKey())));
    }

    /** True where the row is not taken; its problems say why. */
    boolean keepOut(Line line, LedgerEntry row) {
        return isRepeated(line, row) || mayBeAnother(line, row) || bearsTheTagOfAnother(line, row);
    }

    /** What a row that is taken keeps later ones from. */
    void taken(Line line, LedgerEntry row, Write write) {
        claim(Claim.of(line, row.key()));
        if (row.tag() != null) {
            claim(Claim.of(row.tag(), line.number()));
        }
        var before = write.before();
        if (before != null && before.tag() != null && !before.tag().equals(write.after().tag())) {
            claim(Claim.of(before.tag(), line.number()));
        }
    }

    private void claim(Claim claim) {
        claimed.add(claim);
        earlier.computeIfAbsent(claim.digest(), digest -> new ArrayList<>(1)).add(claim);
    }

    List<Claim> claimed() {
        return claimed;
    }

    private boolean isRepeated(Line line, LedgerEntry row) {
        var mine = Claim.of(line, row.key());
        var first = claims(mine.digest()).filter(claim -> Objects.equals(claim.maker(), mine.maker())
                && Objects.equals(claim.month(), mine.month())).findAny();
        first.ifPresent(claim -> {
            var found = row.marks().serial().asStamped();
            if (claim.content() == mine.content()) {
                line.problems().refuse(LedgerColumn.SERIAL, "DUPLICATE_IN_FILE", found,
                        "each container once: line " + claim.line() + " says the same");
            } else {
                line.problems().doubt(LedgerColumn.SERIAL, "TWICE_IN_FILE", found, "each container once: line "
                        + claim.line() + " has the same specification, maker, serial and month, and says otherwise");
            }
        });
        return first.isPresent();
    }

    private boolean mayBeAnother(Line line, LedgerEntry row) {
        var mine = Claim.of(line, row.key());
        boolean isWhole = mine.maker() != null && mine.month() != null;
        if (known.containers().containsKey(row.key())
                && (isWhole || known.closed().contains(known.containers().get(row.key()).id()))) {
            return false;
        }
        var others = Stream.concat(
                registered.getOrDefault(withoutMakerAndMonth(row.key()), List.of()).stream()
                        .filter(one -> !one.marks().naturalKey().equals(row.key())
                                && isAlike(row.key(), one.marks().naturalKey()))
                        .map(one -> "container " + one.id()),
                claims(mine.digest()).filter(claim -> isAlike(mine, claim)).map(claim -> "line " + claim.line()))
                .toList();
        if (!others.isEmpty()) {
            line.problems().doubt(mine.maker() == null ? LedgerColumn.MAKER : LedgerColumn.MANUFACTURED,
                    "MAY_BE_ANOTHER", row.marks().serial().asStamped(), "marks that fit one container only: "
                            + others.getFirst() + " may be the same one, since maker or month is left out "
                            + (isWhole ? "there" : "here"));
        }
        return !others.isEmpty();
    }

    private boolean bearsTheTagOfAnother(Line line, LedgerEntry row) {
        var tag = row.tag();
        if (tag == null) {
            return false;
        }
        var holder = known.tags().get(tag);
        var own = known.containers().get(row.key());
        var other = holder != null && (own == null || !own.id().equals(holder))
                ? "container " + holder + " bears it"
                : claims(Claims.digest(tag)).map(claim -> "line " + claim.line()
                        + " has it, or takes it off its container").findAny().orElse(null);
        if (other != null) {
            line.problems().doubt(LedgerColumn.TAG, "TAG_IN_USE", String.valueOf(tag),
                    "a tag that no other container has: " + other);
        }
        return other != null;
    }

    private Stream<Claim> claims(UUID digest) {
        return earlier.getOrDefault(digest, List.of()).stream();
    }

    private static NaturalKey withoutMakerAndMonth(NaturalKey key) {
        return new NaturalKey(key.scheme(), key.specification(), null, key.serial(), null);
    }

    private static boolean isAlike(NaturalKey one, NaturalKey other) {
        return mayBeSame(one.maker(), other.maker()) && mayBeSame(one.manufactured(), other.manufactured());
    }

    private static boolean isAlike(Claim one, Claim other) {
        return mayBeSame(one.maker(), other.maker()) && mayBeSame(one.month(), other.month());
    }

    private static boolean mayBeSame(@Nullable Object one, @Nullable Object other) {
        return one == null || other == null || one.equals(other);
    }

}
