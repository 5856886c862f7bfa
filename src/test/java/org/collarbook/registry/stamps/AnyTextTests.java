package org.collarbook.registry.stamps;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Random;
import java.util.function.BiFunction;

import org.collarbook.registry.Capacities;
import org.collarbook.registry.MakerSymbol;
import org.collarbook.registry.Serial;
import org.collarbook.registry.Tag;
import org.collarbook.registry.Tare;
import org.collarbook.regulation.Collar;
import org.collarbook.regulation.Reading;
import org.collarbook.regulation.RequalificationMark;
import org.collarbook.regulation.Rin;
import org.collarbook.regulation.Specification;
import org.collarbook.regulation.StampedMonth;
import org.collarbook.regulation.WaterCapacity;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Whatever the text, every reader answers, names a place inside it, and means what it prints. */
class AnyTextTests {

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
    private static final List<String> TRUE = List.of("DOT-4BA240", "TC-4BAM17/DOT-4BA240", "DOT-SP12345-3000",
            "EN 1442",
            "π EN 1442:2017 P15Y", "UN ISO 9809-1", "TC-SU 5931", "5-95", "12/11", "1202", "5 A 95", "9 A1 32 06",
            "5/B045/16 E", "3-12E *+", "10-99 P, V, L", "F IB 2000/12", "2014", "WC 47.6", "W.C. 47.6 LB", "TW 17.0",
            "TARE 7.7 KG", "108 L", "47.6 LB", "(8003)0952114112345432a/b", "(8004)95211415678", "S/N 1234", "XY",
            "CONDEMNED", "XXXX", "DOT-XXXXXX", "SCRAP", "T 7,8 KG", "DOT-4BA240 4-15", "DOT-4BA240 TC-4BAM17",
            "DOT-4BA240 / 9917 / XY / AB 5-15 / 12-20E", "25E D MF 765432 H", "PW200 PH300BAR 62.1KG 50L 5.8MM",
            "ISO 9809-1 F IB 2000/12", "]d280030952114112345432ab", "800495211415678", "P15Y", "99E", "D-24", "pi 0036",
            "DOT-3A1800-1234-XY AB 5-95", "DOT-3A1800 / 1234 / XY / AB 5-95");
    private static final String ODD = "0123456789-/ .,ABCDEFKLMNOPSTUVWXYZabdotc*+★()#:πΠ–—－Ａ０\t\n\r\u0000\u0085\u200b"
            + "\ufeff\u2028\u00a0\u3000é\ud800\udc00\ud83d\ude00\uffff";
    private static final List<@Nullable Specification> CONTEXTS = java.util.Arrays.asList(null,
            Specification.parse("DOT-4BA240"), Specification.parse("DOT-8AL"), Specification.parse("UN"),
            Specification.parse("EN 1442"), Specification.parse("TC-4BAM17"), Specification.parse("MC-331"));
    private static final List<BiFunction<String, Collar, Reading<?>>> READERS = List.of(StampedMonth::read,
            RequalificationMark::read, Capacities::read, Tare::read,
            (text, collar) -> Reading.of(text, Specification.tryParse(text)),
            (text, collar) -> Reading.of(text, WaterCapacity.tryParse(text)),
            (text, collar) -> Reading.of(text, Rin.tryParse(text)),
            (text, collar) -> Reading.of(text, Serial.tryParse(text)),
            (text, collar) -> Reading.of(text, MakerSymbol.tryParse(text)),
            (text, collar) -> Reading.of(text, Tag.tryParse(text)),
            (text, collar) -> CollarReading.of(List.of(text), collar).lines().getFirst().reading());

    @Test
    void isAnswered() {
        texts(20_000, 1);
    }

    /** The stated size. */
    @Test
    @org.junit.jupiter.api.Tag("full")
    void isAnsweredAMillionTimes() {
        texts(1_000_000, 2);
    }

    private static void texts(int count, long seed) {
        var random = new Random(seed);
        for (int i = 0; i < count; i++) {
            var text = i % 3 == 0 ? nonsense(random) : mutated(random);
            var collar = Collar.of(CONTEXTS.get(random.nextInt(CONTEXTS.size())), random.nextBoolean()
                    ? null
                    : YearMonth.of(1930 + random.nextInt(90), 5), TODAY);
            for (var reader : READERS) {
                answers(reader, text, collar, seed);
            }
            var lines = List.of(text, mutated(random), mutated(random), mutated(random));
            assertThat(CollarReading.of(lines, collar).lines()).as("seed %d: %s", seed, lines).hasSize(4);
        }
    }

    private static void answers(BiFunction<String, Collar, Reading<?>> reader, String text, Collar collar, long seed) {
        try {
            switch (reader.apply(text, collar)) {
                case Reading.Read<?> read -> isReadBack(reader, read, collar);
                case Reading.Ambiguous<?> ambiguous -> require(ambiguous.readings().size() > 1 && !ambiguous.because()
                        .isBlank(), ambiguous);
                case Reading.Unreadable<?> no -> require(no.index() >= 0 && no.index() <= text.length()
                        && !no.expected().isBlank(), no);
            }
        } catch (RuntimeException | AssertionError failure) {
            throw new AssertionError("seed " + seed + ", text '" + text + "', " + collar, failure);
        }
    }

    /** What a whole line is taken for depends on its label; the value has its own reader here. */
    private static void isReadBack(BiFunction<String, Collar, Reading<?>> reader, Reading.Read<?> read, Collar collar) {
        if (!(read.value() instanceof Stamp)) {
            var again = reader.apply(read.value().toString(), collar);
            require(again instanceof Reading.Read<?> same && same.value().equals(read.value()), again);
        }
    }

    private static void require(boolean holds, Object shown) {
        if (!holds) {
            throw new AssertionError(shown);
        }
    }

    private static String nonsense(Random random) {
        var text = new StringBuilder();
        for (int length = random.nextInt(20); length > 0; length--) {
            text.append(random.nextInt(50) == 0
                    ? (char) random.nextInt(0x10000)
                    : ODD.charAt(random.nextInt(ODD.length())));
        }
        return text.toString();
    }

    private static String mutated(Random random) {
        var text = new StringBuilder(TRUE.get(random.nextInt(TRUE.size())));
        for (int changes = random.nextInt(4); changes > 0 && !text.isEmpty(); changes--) {
            int at = random.nextInt(text.length());
            char odd = ODD.charAt(random.nextInt(ODD.length()));
            switch (random.nextInt(4)) {
                case 0 -> text.deleteCharAt(at);
                case 1 -> text.insert(at, odd);
                case 2 -> text.setCharAt(at, odd);
                default -> text.append(text.substring(at));
            }
        }
        return text.toString();
    }
}
