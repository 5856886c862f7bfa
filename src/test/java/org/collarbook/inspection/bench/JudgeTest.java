package org.collarbook.inspection.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;

import org.collarbook.inspection.bench.Checked.Finding;
import org.collarbook.inspection.bench.Remark.Code;
import org.collarbook.platform.ProblemException;
import org.collarbook.registry.Marks;
import org.collarbook.registry.Serial;
import org.collarbook.registry.ServicePressure;
import org.collarbook.registry.Stamped;
import org.collarbook.registry.Tare;
import org.collarbook.regulation.ContainerKind;
import org.collarbook.regulation.Method;
import org.collarbook.regulation.Requalification.Result;
import org.collarbook.regulation.Rin;
import org.collarbook.regulation.Specification;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** What follows from a sheet, mark by mark. */
class JudgeTest {

    private static final LocalDate TODAY = LocalDate.of(2026, 11, 25);
    private static final Checked SOUND = new Checked(VisualItem.CORROSION, Finding.SATISFACTORY, null);

    /** A sheet in parts, so that a test changes what it is about. */
    private static final class Sheet {

        private Method method = Method.VOLUMETRIC_EXPANSION;
        private final List<Checked> visual = new ArrayList<>(List.of(SOUND));
        private @Nullable Integer marked = 240;
        private @Nullable Integer test = 480;
        private @Nullable Expansion expansion = new Expansion(new BigDecimal("100"), new BigDecimal("2"));
        private @Nullable BigDecimal limit;
        private final List<Attempt> repeats = new ArrayList<>();
        private @Nullable BigDecimal tare;
        private final List<CondemningGround> grounds = new ArrayList<>();
        private @Nullable String disposition = "as told";

        private static Sheet of(Method method) {
            var sheet = new Sheet();
            sheet.method = method;
            if (method != Method.VOLUMETRIC_EXPANSION) {
                sheet.expansion = null;
            }
            if (method != Method.VOLUMETRIC_EXPANSION && method != Method.PROOF_PRESSURE) {
                sheet.marked = null;
                sheet.test = null;
            }
            return sheet;
        }

        private TestSheet filled() {
            return new TestSheet(LocalDate.of(2026, 11, 20), method, Rin.parse("A123"), false, false, visual, marked,
                    test, expansion, limit, repeats, "painted", "Owner", "M. Holt", tare, grounds, disposition, null);
        }
    }

    private static Marked of(String specification) {
        return Marked.from(new Marks(ContainerKind.CYLINDER, Stamped.of(Specification.parse(specification)), null,
                Stamped.of(Serial.parse("T1")), null, null, Stamped.of(Tare.parse("20 lb")), null));
    }

    private static Judgement judged(String specification, Sheet sheet) {
        var refusals = new Refusals();
        var judged = Judge.judge(of(specification), sheet.filled(), false, TODAY, refusals);
        refusals.done();
        return Objects.requireNonNull(judged);
    }

    private static void refused(String specification, Sheet sheet, String pointer, String code, String rule) {
        var refusals = new Refusals();
        assertThat(Judge.judge(of(specification), sheet.filled(), false, TODAY, refusals)).isNull();
        assertThatThrownBy(refusals::done).isInstanceOfSatisfying(ProblemException.class, told -> {
            var error = told.problem().errors().getFirst();
            assertThat(error.pointer() + " " + error.code()).isEqualTo(pointer + " " + code);
            assertThat(error.accepted()).contains(rule);
            assertThat(told.problem().more().get("citations")).asInstanceOf(
                    org.assertj.core.api.InstanceOfAssertFactories.list(Refusals.Cited.class))
                    .anySatisfy(cited -> assertThat(cited.citation().section()).contains(rule));
        });
    }

    private static @Nullable Remark remark(Judgement judged, Code code) {
        return judged.remarks().stream().filter(one -> one.code() == code).findFirst().orElse(null);
    }

    /** 49 CFR 180.205(i): over 10 %, a 4E over 12 %; handed-down values of 5 % for aluminium are not in it. */
    @ParameterizedTest
    @CsvSource({"DOT-4BA240, 10, PASSED", "DOT-4BA240, 10.001, CONDEMNED", "DOT-4BA240, 12, CONDEMNED",
            "DOT-4E240, 10.001, PASSED", "DOT-4E240, 12, PASSED", "DOT-4E240, 12.001, CONDEMNED",
            "TC-4BAM17/DOT-4BA240, 10.001, CONDEMNED", "CTC-4BA240, 10.001, CONDEMNED"})
    void theLimitIsTheSpecifications(String specification, BigDecimal permanent, Result result) {
        var sheet = new Sheet();
        sheet.expansion = new Expansion(new BigDecimal("100"), permanent);
        var judged = judged(specification, sheet);
        assertThat(judged.result()).isEqualTo(result);
        var remark = remark(judged, result == Result.PASSED ? Code.EXPANSION_WITHIN_LIMIT : Code.EXPANSION_OVER_LIMIT);
        assertThat(remark).isNotNull();
        assertThat(remark.text()).contains("rounded up to the hundredth");
        assertThat(remark.citation()).isEqualTo(Sources.CONDEMNATION);
    }

    /** The permit or the other authority gives the limit and the pressure; neither is made up. */
    @Test
    void whereNoDotSpecificationGovernsTheLimitIsAskedFor() {
        var sheet = new Sheet();
        refused("DOT-SP12345", sheet, "/limitPercent", "MISSING", "180.205(i)");
        sheet.limit = new BigDecimal("5");
        sheet.expansion = new Expansion(new BigDecimal("100"), new BigDecimal("5"));
        var judged = judged("DOT-SP12345", sheet);
        assertThat(judged.result()).isEqualTo(Result.PASSED);
        assertThat(judged.minimumPsig()).isNull();
        assertThat(remark(judged, Code.TEST_PRESSURE_NOT_CHECKED)).isNotNull();
        sheet.expansion = new Expansion(new BigDecimal("100"), new BigDecimal("5.001"));
        assertThat(judged("DOT-SP12345", sheet).result()).isEqualTo(Result.CONDEMNED);
        refused("DOT-4BA240", sheet, "/limitPercent", "NOT_ALLOWED", "180.205(i)");
    }

    /** 49 CFR 180.209(a) Table 1: twice 240 psig for a 4BA. */
    @ParameterizedTest
    @EnumSource(names = {"VOLUMETRIC_EXPANSION", "PROOF_PRESSURE"})
    void belowTheLeastPressureItIsNoTest(Method method) {
        var sheet = Sheet.of(method);
        sheet.test = 479;
        refused("DOT-4BA240", sheet, "/testPressurePsig", "TEST_PRESSURE_TOO_LOW", "180.209(a) Table 1");
        sheet.test = 480;
        assertThat(judged("DOT-4BA240", sheet).minimumPsig()).isEqualByComparingTo("480");
    }

    /** 49 CFR 180.205(g)(5), which letter 12-0176 of PHMSA names for a failure of the equipment. */
    @Test
    void aRepeatIsHeldToTheFirstAttempt() {
        var sheet = new Sheet();
        sheet.repeats.add(new Attempt(500, null, Attempt.Reason.APPARATUS_FAILED, "O-ring"));
        sheet.test = 550;
        var judged = judged("DOT-4BA240", sheet);
        assertThat(judged.result()).isEqualTo(Result.PASSED);
        assertThat(remark(judged, Code.TEST_REPEATED)).isNotNull();
        sheet.test = 551;
        refused("DOT-4BA240", sheet, "/testPressurePsig", "REPEAT_PRESSURE_TOO_HIGH", "180.205(g)(5)");
        // the second repeat is not measured from the first repeat
        sheet.repeats.add(new Attempt(550, null, Attempt.Reason.APPARATUS_FAILED, "O-ring again"));
        sheet.test = 605;
        refused("DOT-4BA240", sheet, "/testPressurePsig", "REPEAT_PRESSURE_TOO_HIGH", "180.205(g)(5)");
        sheet.test = 550;
        assertThat(judged("DOT-4BA240", sheet).result()).isEqualTo(Result.PASSED);
    }

    /** 49 CFR 180.215(b): the reason for a repeat, a rejection or a condemnation is on the record. */
    @Test
    void whatIsNotPassedPlainlyIsExplained() {
        var sheet = new Sheet();
        sheet.disposition = null;
        assertThat(judged("DOT-4BA240", sheet).result()).isEqualTo(Result.PASSED);
        sheet.visual.add(new Checked(VisualItem.DENTS, Finding.DEFECT, "on a weld"));
        refused("DOT-4BA240", sheet, "/disposition", "MISSING", "180.215(b)");
        sheet.disposition = "to the maker for repair";
        assertThat(judged("DOT-4BA240", sheet).result()).isEqualTo(Result.REJECTED);
    }

    /** NFPA 58 Annex C.3.2.2: aluminium that was in a fire is removed for good; steel is rejected for a look. */
    @ParameterizedTest
    @CsvSource({"DOT-4E240, CONDEMNED", "DOT-4BA240, REJECTED", "DOT-4BW240, REJECTED"})
    void fireEndsA4E(String specification, Result result) {
        var sheet = Sheet.of(Method.EXTERNAL_VISUAL);
        sheet.visual.add(new Checked(VisualItem.FIRE_DAMAGE, Finding.DEFECT, "charred paint"));
        assertThat(judged(specification, sheet).result()).isEqualTo(result);
        sheet.visual.set(1, new Checked(VisualItem.FIRE_DAMAGE, Finding.SATISFACTORY, null));
        assertThat(judged(specification, sheet).result()).isEqualTo(Result.PASSED);
    }

    @ParameterizedTest
    @EnumSource
    void aGroundCondemnsWhereItCanStand(CondemningGround ground) {
        var sheet = Sheet.of(Method.EXTERNAL_VISUAL);
        sheet.grounds.add(ground);
        switch (ground) {
            case CGA_CRITERIA, LEAK_THROUGH_WALL, WEAKENING_CRACKS, SERVICE_LIFE_EXPIRED -> {
                assertThat(judged("DOT-4BA240", sheet).result()).isEqualTo(Result.CONDEMNED);
            }
            case ELASTIC_EXPANSION_OF_3HT, DENT_OR_BULGE_OF_3HT -> {
                assertThat(judged("DOT-3HT1850", sheet).result()).isEqualTo(Result.CONDEMNED);
                refused("DOT-4BA240", sheet, "/grounds/0", "NOT_FOR_THIS_SPECIFICATION", "180.205(i)");
            }
            case OVERHEATED_ALUMINIUM, SPECIAL_PERMIT_LIMIT -> {
                assertThat(judged("DOT-SP12345", sheet).result()).isEqualTo(Result.CONDEMNED);
                refused("DOT-4BA240", sheet, "/grounds/0", "NOT_FOR_THIS_SPECIFICATION", "180.205(i)");
            }
        }
    }

    /** 49 CFR 180.209(c), any 4-series but 4L. That a look from outside does not answer for it is our reading. */
    @ParameterizedTest
    @CsvSource({"DOT-4BA240, EXTERNAL_VISUAL, 19.0, REJECTED", "DOT-4BA240, EXTERNAL_VISUAL, 19.001, PASSED",
            "DOT-4BA240, PROOF_PRESSURE, 19.0, PASSED", "DOT-4BA240, VOLUMETRIC_EXPANSION, 15.0, PASSED",
            "DOT-3AA240, EXTERNAL_VISUAL, 15.0, PASSED", "DOT-4L240, ULTRASONIC, 15.0, PASSED"})
    void lostTareAsksForAPressureTest(String specification, Method method, BigDecimal weighed, Result result) {
        var sheet = Sheet.of(method);
        sheet.tare = weighed;
        var judged = judged(specification, sheet);
        assertThat(judged.result()).isEqualTo(result);
        boolean told = specification.startsWith("DOT-4B") && weighed.compareTo(new BigDecimal("19")) <= 0;
        assertThat(remark(judged, Code.TARE_LOSS) != null).isEqualTo(told);
        assertThat(judged.tareLossPercent()).isNotNull();
    }

    @Test
    void anImpossibleWeightIsRefused() {
        var sheet = new Sheet();
        sheet.tare = new BigDecimal("40.001");
        var refusals = new Refusals();
        assertThat(Judge.judge(of("DOT-4BA240"), sheet.filled(), false, TODAY, refusals)).isNull();
        assertThatThrownBy(refusals::done).hasMessageContaining("/tareLb");
    }

    /** The register's own mark is not silently replaced by what the sheet says. */
    @Test
    void theMarkedPressureIsTheRegisters() {
        var sheet = new Sheet();
        sheet.marked = 200;
        refused("DOT-4BA240", sheet, "/markedPressurePsig", "DIFFERS_FROM_REGISTER", "180.215(b)");
        var marks = new Marks(ContainerKind.CYLINDER, Stamped.of(Specification.parse("DOT-4BA240")), null,
                Stamped.of(Serial.parse("T1")), null, null, null, new ServicePressure(200));
        assertThat(Judge.judge(Marked.from(marks), sheet.filled(), false, TODAY, new Refusals())).isNotNull();
    }

    /** A worse finding never gives a better result. */
    @Test
    void moreWrongIsNeverBetter() {
        var random = new Random(7);
        for (int i = 0; i < 2000; i++) {
            var sheet = new Sheet();
            sheet.expansion = new Expansion(new BigDecimal("100"), BigDecimal.valueOf(random.nextInt(2000), 2));
            var before = judged("DOT-4E240", sheet).result();
            switch (random.nextInt(3)) {
                case 0 -> sheet.visual.add(new Checked(VisualItem.DENTS, Finding.DEFECT, "deep"));
                case 1 -> sheet.grounds.add(CondemningGround.LEAK_THROUGH_WALL);
                default -> sheet.expansion = new Expansion(new BigDecimal("100"), new BigDecimal("50"));
            }
            assertThat(judged("DOT-4E240", sheet).result()).isGreaterThanOrEqualTo(before)
                    .isNotEqualTo(Result.PASSED);
        }
    }

    @ParameterizedTest
    @EnumSource
    void everyMethodSaysWhatItAsksOrIsNotRecordedHere(Method method) {
        if (Contents.areHeldFor(method)) {
            assertThat(Contents.of(method).kinds()).isNotEmpty();
            assertThat(Contents.methods()).contains(method.name());
        } else {
            assertThat(method.name()).startsWith("EXTINGUISHER_");
            assertThatThrownBy(() -> Contents.of(method)).isInstanceOf(IllegalArgumentException.class);
        }
    }
}
