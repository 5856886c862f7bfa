package org.collarbook.registry.stamps;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Supplier;

import org.collarbook.registry.Capacities;
import org.collarbook.registry.MakerSymbol;
import org.collarbook.registry.Serial;
import org.collarbook.registry.Tag;
import org.collarbook.registry.Tare;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.RandomSpecification;
import org.collarbook.regulation.Readings;
import org.collarbook.regulation.Rin;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.WaterCapacity;
import org.junit.jupiter.api.Test;

/** What is printed is read back as the same, for every value that a stamp can give. */
class RoundTripTests {

    private static final long SEED = 20261125;
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private final Random random = new Random(SEED);

    @Test
    void capacitiesTaresTagsAndRins() {
        for (int i = 0; i < 20_000; i++) {
            var capacity = new WaterCapacity(amount(), WaterCapacity.Unit.values()[random.nextInt(4)]);
            assertThat(WaterCapacity.parse(capacity.toString())).as(seed()).isEqualTo(capacity);
            assertThat(Readings.value(Capacities.read("WC " + capacity, Collar.unknown(TODAY)))).as(seed())
                    .isEqualTo(capacity);
            var tare = new Tare(amount());
            assertThat(Readings.value(Tare.read(tare.toString(), Collar.unknown(TODAY)))).as(seed()).isEqualTo(tare);
            var tag = tag();
            assertThat(Tag.parse(tag.toString())).as(seed()).isEqualTo(tag);
            var rin = new Rin("%c%03d".formatted('A' + random.nextInt(26), random.nextInt(1000)));
            assertThat(Rin.parse(rin.toString())).as(seed()).isEqualTo(rin);
        }
    }

    @Test
    void linesOfEveryKind() {
        List<Supplier<Stamp>> kinds = List.of(() -> new Stamp.Design(RandomSpecification.of(random)),
                () -> new Stamp.OriginalTest(random.nextBoolean() ? null : inspector(), month()),
                () -> new Stamp.Holds(new WaterCapacity(amount(), WaterCapacity.Unit.values()[random.nextInt(4)])),
                () -> new Stamp.Weighs(new Tare(amount()), null), () -> new Stamp.Tagged(tag()),
                () -> new Stamp.Numbered(serial()), this::whole);
        for (int i = 0; i < 20_000; i++) {
            var stamp = kinds.get(i % kinds.size()).get();
            var read = CollarReading.of(List.of(line(stamp)), Collar.unknown(TODAY)).lines().getFirst();
            assertThat(Readings.value(read.reading())).as("%s, %s", seed(), stamp).isEqualTo(stamp);
            assertThat(read.kind()).isEqualTo(stamp.kind());
        }
    }

    /** As it would be stamped: with the label that says what it is. */
    private static String line(Stamp stamp) {
        return switch (stamp) {
            case Stamp.Holds _ -> "WC " + stamp;
            case Stamp.Weighs _ -> "TW " + stamp;
            case Stamp.Numbered _ -> "S/N: " + stamp;
            case Stamp.OriginalTest(var inspector, var _) -> (inspector == null ? "" : inspector + " ") + stamp;
            default -> stamp.toString();
        };
    }

    private Stamp whole() {
        var parts = new ArrayList<Stamp>(List.of(new Stamp.Design(Specification.parse("DOT-3A" + (100 + random.nextInt(
                9_000)))), new Stamp.Numbered(serial()), new Stamp.MadeBy(new MakerSymbol(letters(6)))));
        if (random.nextBoolean()) {
            parts.add(new Stamp.OriginalTest(random.nextBoolean() ? null : letters(3), month()));
        }
        return new Stamp.Together(parts);
    }

    private static String seed() {
        return "seed " + SEED;
    }

    private YearMonth month() {
        return YearMonth.of(1940, 1).plusMonths(random.nextInt(86 * 12));
    }

    private BigDecimal amount() {
        return BigDecimal.valueOf(1_000 + random.nextInt(9_000_000), 3);
    }

    private Serial serial() {
        return new Serial(random.nextInt(1_000_000) + (random.nextBoolean() ? "" : letters(3)));
    }

    private String letters(int most) {
        return random.ints(1 + random.nextInt(most), 'A', 'Z' + 1).collect(StringBuilder::new,
                StringBuilder::appendCodePoint, StringBuilder::append).toString();
    }

    /** Not "SN", "TW" or another label: those lines are read as what the label says. */
    private String inspector() {
        return "Q" + letters(2);
    }

    private Tag tag() {
        if (random.nextBoolean()) {
            return new Tag("(8004)" + random.nextInt(1_000_000) + letters(5));
        }
        var payload = "%012d".formatted(Math.floorMod(random.nextLong(), 1_000_000_000_000L));
        return new Tag("(8003)0" + payload + checkDigit(payload) + letters(5));
    }

    /** GS1 General Specifications, check digit of fixed-length keys: weights 3 and 1 from the right; from memory. */
    private static int checkDigit(String payload) {
        int sum = 0;
        for (int i = 0; i < payload.length(); i++) {
            sum += (payload.charAt(payload.length() - 1 - i) - '0') * (i % 2 == 0 ? 3 : 1);
        }
        return Math.floorMod(-sum, 10);
    }
}
