package org.collarbook.registry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.util.List;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.Stream;

import org.collarbook.regulation.ParseResult;
import org.collarbook.regulation.ParseResult.Rejected;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Serial, maker's symbol, tare, service pressure and tag: what each text means, and what print and parse give back. */
class StampsTests {

    static Stream<Arguments> readings() {
        Function<String, ParseResult<?>> serial = Serial::tryParse;
        Function<String, ParseResult<?>> maker = MakerSymbol::tryParse;
        Function<String, ParseResult<?>> tare = Tare::tryParse;
        Function<String, ParseResult<?>> pressure = ServicePressure::tryParse;
        return Stream.of(Arguments.of(serial, " ab  12\t3 ", "AB 12 3"), Arguments.of(serial, "1", "1"),
                Arguments.of(serial, "9".repeat(40), "9".repeat(40)), Arguments.of(serial, "é\u00a0x", "É X"),
                Arguments.of(maker, "xy", "XY"), Arguments.of(maker, "M".repeat(20), "M".repeat(20)),
                // the TW stamp is in pounds: trade practice, NFPA 58 from memory
                Arguments.of(tare, "TW 17.0", "17 lb"), Arguments.of(tare, "T.W. 17", "17 lb"),
                Arguments.of(tare, "17 lb", "17 lb"), Arguments.of(tare, "17.25LBS", "17.25 lb"),
                Arguments.of(tare, "TW 300", "300 lb"), Arguments.of(tare, "0.1 lb", "0.1 lb"),
                // 0.45359237 kg is one pound by definition (international avoirdupois pound, 1959)
                Arguments.of(tare, "0.45359237 kg".replace("0.45359237", "0.453592"), "1 lb"),
                Arguments.of(tare, "7.7 kg", "16.976 lb"), Arguments.of(pressure, "240", "240 psig"),
                Arguments.of(pressure, "250 PSI", "250 psig"), Arguments.of(pressure, "20000 psig", "20000 psig"));
    }

    @ParameterizedTest
    @MethodSource("readings")
    void readsWhatIsStamped(Function<String, ParseResult<?>> parser, String text, String canonical) {
        assertThat(parser.apply(text).orElseThrow("mark", text)).hasToString(canonical);
    }

    static Stream<Arguments> refusals() {
        Function<String, ParseResult<?>> serial = Serial::tryParse;
        Function<String, ParseResult<?>> maker = MakerSymbol::tryParse;
        Function<String, ParseResult<?>> tare = Tare::tryParse;
        Function<String, ParseResult<?>> pressure = ServicePressure::tryParse;
        Function<String, ParseResult<?>> tag = Tag::tryParse;
        return Stream.of(Arguments.of(serial, "", 0), Arguments.of(serial, "  ", 0),
                Arguments.of(serial, "9".repeat(41), 40), Arguments.of(serial, "9".repeat(10_000), 40),
                Arguments.of(serial, "AB\nC", 2), Arguments.of(serial, "A\u0000", 1),
                Arguments.of(serial, "A\ud800", 1), Arguments.of(maker, "M".repeat(21), 20),
                Arguments.of(tare, "17", 2), Arguments.of(tare, "-17 lb", 0), Arguments.of(tare, "0 lb", 0),
                Arguments.of(tare, "0.09 lb", 0), Arguments.of(tare, "1000000.1 lb", 0),
                Arguments.of(tare, "17 stone", 2), Arguments.of(pressure, "0", 0), Arguments.of(pressure, "20001", 0),
                Arguments.of(pressure, "17 bar", 3), Arguments.of(pressure, "x", 0), Arguments.of(tag, "", 0),
                Arguments.of(tag, "x".repeat(61), 60), Arguments.of(tag, "a\u0007", 1));
    }

    @ParameterizedTest
    @MethodSource("refusals")
    void saysWhereATextStopsMakingSense(Function<String, ParseResult<?>> parser, String text, int index) {
        assertThat(parser.apply(text)).isInstanceOfSatisfying(Rejected.class, rejected -> {
            assertThat(rejected.index()).isEqualTo(index);
            assertThat(rejected.expected()).isNotBlank();
            assertThat(rejected.found().length()).isLessThanOrEqualTo(20);
        });
    }

    @Test
    void parseNamesWhatIsWrongWithoutEchoingItAll() {
        assertThatThrownBy(() -> Serial.parse("9".repeat(10_000))).isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("index 40").hasMessageMatching("(?s).{1,300}");
        assertThatThrownBy(() -> new Serial("abc")).as("of trusted parts only").hasMessageContaining("serial");
        assertThatThrownBy(() -> new Tare(BigDecimal.ZERO)).hasMessageContaining("tare");
    }

    /** Unicode Standard Annex 15: NFC writes alike what is the same character, NFKC shows what only looks alike. */
    @Test
    void noSignLooksLikeAnother() {
        for (var text : List.of("AB\u200b77", "AB\u00ad77", "AB\ufeff77", "AB\u202e77", "AB\u2060", "AB\u030c77",
                "AB\ufe0f77", "AB\u20287", "AB\u2800", "AB\u115f", "AB\u3164", "AB\ue000", "\uff21B77", "AB\uff17",
                "AB\u00b2", "\u2116 7", "\ufb00", "ab\u2460", "AB\udb40\udc41", "\u01f0")) {
            for (var sign : List.of(Serial.tryParse(text), MakerSymbol.tryParse(text))) {
                assertThat(sign).as(text).isInstanceOfSatisfying(Rejected.class, rejected -> assertThat(rejected
                        .expected()).matches("U\\+[0-9A-F]{4,5} \\(.+\\) .*(leave it out|write '.*).*"));
            }
            if (!text.equals("\u01f0")) {
                assertThat(Tag.tryParse(text)).as(text).isInstanceOf(Rejected.class);
            }
        }
        assertThat(Serial.tryParse("AB\u200b77")).isEqualTo(new Rejected<>(2, "\u200b77",
                "U+200B (ZERO WIDTH SPACE) can be neither seen nor stamped by itself: leave it out"));
        assertThat(Serial.tryParse("\uff41B77")).isEqualTo(new Rejected<>(0, "\uff41B77",
                "U+FF41 (FULLWIDTH LATIN SMALL LETTER A) is another form of 'a': write 'a' where that is stamped"));
        assertThat(Serial.parse("e\u0301 7")).isEqualTo(Serial.parse("\u00c9 7"));
        assertThat(MakerSymbol.parse("E\u0301")).isEqualTo(MakerSymbol.parse("\u00e9"));
        assertThat(Tag.parse("E\u0301")).isEqualTo(Tag.parse("\u00c9"));
        assertThat(new Serial("AB\u200b77")).as("what the register holds stays readable").hasToString("AB\u200b77");
        assertThat(new MakerSymbol("\uff21")).hasToString("\uff21");
        assertThat(new Tag("AB\u200b77")).hasToString("AB\u200b77");
        assertThat(new Tag("E\u0301")).hasToString("E\u0301");
    }

    /**
     * GS1 examples: (8003)0952114112345432a/b and (8004)95211415678 stand in a test that quotes the GS1 Tag Data Standard
     * 2.3 (GRAI and GIAI of company prefix 9521141); the syntax of the two AIs in gs1/gs1-syntax-dictionary, lines 317
     * and 318.
     */
    @Test
    void readsGs1AssetsAndChecksTheirDigit() {
        assertThat(Tag.parse("(8003)0952114112345432a/b")).hasToString("(8003)0952114112345432a/b");
        assertThat(Tag.parse(" (8004)95211415678 ")).hasToString("(8004)95211415678");
        assertThat(Tag.tryParse("(8003)0952114112345532a/b")).isEqualTo(new Rejected<>(19, "532a/b",
                "check digit 4 after 952114112345"));
        assertThat(Tag.tryParse("(8003)09521141123454")).as("names a type, not one cylinder")
                .isInstanceOf(Rejected.class);
        assertThat(Tag.tryParse("(8003)0952114112345412345678901234567")).as("serial of 17").isInstanceOf(
                Rejected.class);
        assertThat(Tag.tryParse("(8004)")).isInstanceOf(Rejected.class);
        assertThat(Tag.tryParse("(8004)" + "9".repeat(31))).isInstanceOf(Rejected.class);
        assertThat(Tag.tryParse("(8004)95é")).isInstanceOf(Rejected.class);
        assertThat(Tag.parse("no GS1 at all: #12")).hasToString("no GS1 at all: #12");
    }

    @Test
    void printedTextsAreReadBackTheSame() {
        long seed = 20261125;
        var random = new Random(seed);
        for (int i = 0; i < 2_000; i++) {
            var text = random.ints(1 + random.nextInt(60), ' ', 0x2ff)
                    .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append).toString();
            roundTrip(seed, text, Serial::tryParse);
            roundTrip(seed, text, MakerSymbol::tryParse);
            roundTrip(seed, text, Tag::tryParse);
            roundTrip(seed, random.nextInt(2_000_000) / 100.0 + (random.nextBoolean() ? " lb" : " kg"), Tare::tryParse);
            roundTrip(seed, random.nextInt(30_000) + " psi", ServicePressure::tryParse);
        }
    }

    private static <T> void roundTrip(long seed, String text, Function<String, ParseResult<T>> parser) {
        if (parser.apply(text) instanceof ParseResult.Parsed<T>(var value, var _)) {
            assertThat(parser.apply(value.toString()).orElseThrow("mark", value.toString()))
                    .as("seed %d, text %s", seed, text).isEqualTo(value);
        }
    }
}
