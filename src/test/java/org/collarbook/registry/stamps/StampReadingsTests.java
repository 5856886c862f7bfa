package org.collarbook.registry.stamps;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;

import org.collarbook.access.Role;
import org.collarbook.testing.Api;
import org.collarbook.testing.RegisterTest;
import org.collarbook.testing.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code POST /api/stamps/readings}: reads lines, stores nothing, and answers whatever comes in. */
@RegisterTest
class StampReadingsTests {

    private static final int MOST_OF_A_BODY = 2 << 20;
    private static final String PATH = "/api/stamps/readings";

    private final Api.Session filler;
    private final Tables tables;

    StampReadingsTests(Api api, Tables tables) {
        this.filler = api.as(Role.FILLER);
        this.tables = tables;
    }

    /** The examples of 49 CFR 178.35(f) and 180.213(d), each line in the light of those before it. */
    @Test
    void readsACollarAndStoresNothing() {
        tables.unchangedBy(() -> {
            var answer = filler.post(PATH, Map.of("lines", List.of("DOT-4BA240", "AB 5-95", "WC 47.6", "TW 17.0",
                    "9 A1 32 06", "5-16E", "S/N 1234"))).expect(200);
            assertThat(answer.at("/readings").size()).isEqualTo(7);
            assertThat(answer.text("/readings/0/outcome")).isEqualTo("READ");
            assertThat(answer.text("/readings/0/kind")).isEqualTo("SPECIFICATION");
            assertThat(answer.text("/readings/0/fields/family")).isEqualTo("4BA");
            assertThat(answer.at("/readings/0/fields/pressure").asInt()).isEqualTo(240);
            assertThat(answer.text("/readings/1/fields/inspector")).isEqualTo("AB");
            assertThat(answer.text("/readings/1/fields/month")).isEqualTo("1995-05");
            assertThat(answer.at("/readings/2/line").asInt()).isEqualTo(3);
            assertThat(answer.text("/readings/2/raw")).isEqualTo("WC 47.6");
            assertThat(answer.text("/readings/2/value")).isEqualTo("47.6 lb");
            assertThat(answer.text("/readings/2/warnings/0")).contains("pounds");
            assertThat(answer.text("/readings/4/fields/rin")).isEqualTo("A123");
            assertThat(answer.text("/readings/5/fields/methods/0")).isEqualTo("EXTERNAL_VISUAL");
            assertThat(answer.text("/readings/5/warnings/0")).contains("RIN");
            assertThat(answer.at("/marks").toString()).isEqualTo("""
                    {"specification":"DOT-4BA240","serial":"1234","manufactured":"1995-05","waterCapacity":"47.6 lb",\
                    "tare":"17 lb","requalifications":[{"mark":"9/A123/2006","month":"2006-09",\
                    "methods":["VOLUMETRIC_EXPANSION"],"rin":"A123","star":false,"plus":false},\
                    {"mark":"5-2016 E","month":"2016-05","methods":["EXTERNAL_VISUAL"],"star":false,"plus":false}]}""");
            assertThat(answer.text("/caution")).isNotBlank();
        });
    }

    @Test
    void tellsEveryReadingOfAnAmbiguousLine() {
        var answer = filler.post(PATH, Map.of("lines", List.of("12/11"))).expect(200);
        assertThat(answer.text("/readings/0/outcome")).isEqualTo("AMBIGUOUS");
        assertThat(answer.text("/readings/0/readings/0/fields/month")).isEqualTo("2011-12");
        assertThat(answer.text("/readings/0/readings/1/fields/month")).isEqualTo("2012-11");
        assertThat(answer.at("/marks").toString()).isEqualTo("{}");
        assertThat(filler.post(PATH, Map.of("lines", List.of("12/11"), "specification", "UN ISO 9809-1")).expect(200)
                .text("/readings/0/value")).isEqualTo("2012-11");
    }

    @Test
    void tellsWhereAnUnreadableLineStopsMakingSense() {
        var answer = filler.post(PATH, Map.of("lines", List.of("DOT-4QQ240", "DOT-4E240"))).expect(200);
        assertThat(answer.text("/readings/0/outcome")).isEqualTo("UNREADABLE");
        assertThat(answer.at("/readings/0/index").asInt()).isEqualTo(4);
        assertThat(answer.text("/readings/0/found")).isEqualTo("4QQ240");
        assertThat(answer.text("/readings/0/expected")).contains("DOT-4BA240");
        assertThat(answer.text("/readings/1/outcome")).as("the next line is none the worse").isEqualTo("READ");
    }

    /** 49 CFR 180.205(i) of the 2019 edition; where the rule book has it is tested beside the reader. */
    @Test
    void aCondemnedContainerIsToldAsOne() {
        var answer = filler.post(PATH, Map.of("lines", List.of("DOT-4BA240", "S/N 1234", "XXXX"))).expect(200);
        assertThat(answer.text("/readings/2/kind")).isEqualTo("CONDEMNED");
        assertThat(answer.text("/readings/2/citation/section")).isEqualTo("180.205(i)");
        assertThat(answer.text("/readings/2/citation/edition")).contains("2019");
        assertThat(answer.at("/marks/condemned").asBoolean()).isTrue();
        assertThat(answer.text("/marks/citation/section")).isEqualTo("180.205(i)");
        assertThat(answer.text("/marks/warnings/0")).contains("must not be filled", "registered as serviceable");
        assertThat(answer.text("/marks/serial")).isEqualTo("1234");
        assertThat(answer.text("/caution")).isNotBlank();
    }

    @Test
    void aTareIsToldInPoundsAndAsStamped() {
        var answer = filler.post(PATH, Map.of("lines", List.of("TARE 7.8 kg"))).expect(200);
        assertThat(answer.text("/readings/0/fields/stamped")).isEqualTo("7.8 kg");
        assertThat(answer.text("/marks/tare")).isEqualTo("17.196 lb");
        assertThat(answer.text("/marks/tareStamped")).isEqualTo("7.8 kg");
    }

    /** The example of the UN Model Regulations, 17th revision, page 676. */
    @Test
    void thePartsOfALineAreFieldsByTheNamesOfTheMarks() {
        var answer = filler.post(PATH, Map.of("lines", List.of("PW200 PH300BAR 62.1KG 50L 5.8MM",
                "DOT-4BA240 / 9917 / XY / AB 5-15 / 12-20E"))).expect(200);
        assertThat(answer.at("/readings/0/fields").toString()).isEqualTo("""
                {"workingPressure":"200 bar","testPressure":"300 bar","tare":"136.907 lb",\
                "tareStamped":"62.1 kg","waterCapacity":"50 L"}""");
        assertThat(answer.text("/readings/1/fields/serial")).isEqualTo("9917");
        assertThat(answer.text("/readings/1/fields/month")).isEqualTo("2015-05");
        assertThat(answer.at("/readings/1/fields/requalifications").toString()).isEqualTo("[\"12-2020 E\"]");
    }

    @ParameterizedTest
    @ValueSource(strings = {"20000", "[2026,11,25]", "1.5", "true", "{}", "\"25.11.2026\""})
    void theDayOfReadingIsATextDate(String asOf) {
        var problem = filler.post(PATH, "{\"lines\":[\"5-95\"],\"asOf\":" + asOf + "}").expectProblem(400,
                "INVALID_INPUT");
        assertThat(problem.errors()).isEqualTo(Map.of("/asOf", "WRONG_TYPE"));
        assertThat(problem.body()).contains("a date as YYYY-MM-DD");
    }

    @Test
    void withoutADoubtThereIsNoCaution() {
        assertThat(filler.post(PATH, Map.of("lines", List.of("DOT-4E240", "5-95"))).expect(200).at("/caution")
                .isMissingNode()).isTrue();
    }

    @Test
    void whatIsGivenBesideTheLinesNarrowsThem() {
        var answer = filler.post(PATH, Map.of("lines", List.of("5-16", "5-42"), "specification", "DOT-4BA240",
                "manufactured", "5-15", "asOf", "2045-01-01")).expect(200);
        assertThat(answer.text("/readings/0/kind")).isEqualTo("REQUALIFICATION");
        assertThat(answer.text("/readings/1/fields/month")).isEqualTo("2042-05");
    }

    static Stream<Arguments> wrong() {
        return Stream.of(Arguments.of("{}", "/lines", "MISSING"), Arguments.of("{\"lines\":[]}", "/lines",
                "OUT_OF_RANGE"),
                Arguments.of("{\"lines\":[\"a\",null]}", "/lines/1", "MISSING"),
                Arguments.of("{\"lines\":[\"" + "x".repeat(201) + "\"]}", "/lines/0", "INVALID_TEXT"),
                Arguments.of("{\"lines\":[" + "\"x\",".repeat(100) + "\"x\"]}", "/lines", "OUT_OF_RANGE"),
                Arguments.of("{\"lines\":[\"x\"],\"specification\":\"DOT-9ZZ\"}", "/specification",
                        "UNKNOWN_SPECIFICATION"),
                Arguments.of("{\"lines\":[\"x\"],\"manufactured\":\"13-04\"}", "/manufactured", "INVALID_MONTH"),
                Arguments.of("{\"lines\":[\"x\"],\"manufactured\":\"12/11\"}", "/manufactured", "AMBIGUOUS_MONTH"),
                Arguments.of("{\"lines\":[\"x\"],\"manufactured\":\"12-2026\"}", "/manufactured", "IN_THE_FUTURE"),
                Arguments.of("{\"lines\":[\"x\"],\"asOf\":\"+999999999-12-31\"}", "/asOf", "OUT_OF_RANGE"),
                Arguments.of("{\"lines\":[\"x\"],\"colour\":\"grey\"}", "/colour", "UNKNOWN_FIELD"));
    }

    @ParameterizedTest
    @MethodSource("wrong")
    void aRequestThatIsWrongIsRefusedByField(String body, String pointer, String code) {
        assertThat(filler.post(PATH, body).expectProblem(400, "INVALID_INPUT").errors()).isEqualTo(Map.of(pointer,
                code));
    }

    @Test
    void hostileLinesAreUnreadableAndNoMore() {
        var answer = filler.post(PATH, "{\"lines\":[\"\\u0000\",\"a\\u001bb\",\"\\ud800\",\"5-95\\udc00\",\"\","
                + "\"\\ufeffDOT-4BA240\",\"" + "9".repeat(199) + "\\ud83d\",\"" + "\ud83d\ude00".repeat(100) + "\"]}")
                .expect(200);
        answer.at("/readings").forEach(line -> assertThat(line.at("/outcome").asString()).as(line.toString())
                .isEqualTo("UNREADABLE"));
        assertThat(answer.text("/readings/2/raw")).isEqualTo("\ufffd");
    }

    static Stream<byte[]> bodies() {
        return Stream.of(new byte[]{}, new byte[]{0}, new byte[]{(byte) 0xff, (byte) 0xfe, 0},
                "null".getBytes(StandardCharsets.UTF_8), "[]".getBytes(StandardCharsets.UTF_8),
                "{\"lines\":\"x\"}".getBytes(StandardCharsets.UTF_8),
                "{\"lines\":[{\"a\":[[[]]]}]}".getBytes(StandardCharsets.UTF_8),
                ("{\"lines\":[" + "[".repeat(5_000)).getBytes(StandardCharsets.UTF_8),
                ("{\"lines\":" + "[".repeat(5_000) + "]".repeat(5_000) + "}").getBytes(StandardCharsets.UTF_8),
                ("{\"lines\":[\"" + "A".repeat(3_000_000) + "\"]}").getBytes(StandardCharsets.UTF_8),
                broken("{\"lines\":[\"5-9", (byte) 0xc3, "\"]}"), broken("{\"lines\":[\"", (byte) 0xed, "\u0000\"]}"));
    }

    private static byte[] broken(String before, byte odd, String after) {
        var head = before.getBytes(StandardCharsets.UTF_8);
        var tail = after.getBytes(StandardCharsets.UTF_8);
        var all = Arrays.copyOf(head, head.length + 1 + tail.length);
        all[head.length] = odd;
        System.arraycopy(tail, 0, all, head.length + 1, tail.length);
        return all;
    }

    @ParameterizedTest
    @MethodSource("bodies")
    void hostileBodiesAreRefused(byte[] body) {
        var refused = filler.post(PATH, body);
        if (body.length > MOST_OF_A_BODY) {
            refused.expectProblem(413, "BODY_TOO_LARGE");
        } else {
            assertThat(refused.expectProblem(400, "INVALID_INPUT").body().length()).isLessThan(2_000);
        }
    }

    @Test
    void randomBytesNeverFailTheService() {
        long seed = 20261125;
        var random = new Random(seed);
        for (int i = 0; i < 300; i++) {
            var noise = new byte[random.nextInt(120)];
            random.nextBytes(noise);
            var body = i % 2 == 0
                    ? noise
                    : ("{\"lines\":[\""
                            + new String(noise, StandardCharsets.ISO_8859_1).replaceAll("[\"\\\\\\p{Cntrl}]",
                                    "")
                            + "\"]}").getBytes(StandardCharsets.UTF_8);
            assertThat(filler.post(PATH, body).status()).as("seed %d, %s", seed, Arrays.toString(noise))
                    .isIn(200, 400);
        }
    }

    @Test
    void aHundredLinesAreAnswered() {
        assertThat(filler.post(PATH, Map.of("lines", Collections.nCopies(100, "DOT-4BA240 "))).expect(200)
                .at("/readings").size()).isEqualTo(100);
    }
}
