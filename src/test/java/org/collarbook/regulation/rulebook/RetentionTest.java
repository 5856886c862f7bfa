package org.collarbook.regulation.rulebook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import org.collarbook.regulation.Retention;
import org.collarbook.regulation.Retention.RecordKind;
import org.junit.jupiter.api.Test;

/** How long records are kept, as 49 CFR 180.215 and 173.315(j)(2) name it. */
class RetentionTest {

    @Test
    void aPeriodIsCountedFromTheDayAndTheRestHangsOnSomethingElse() {
        Retention retention = RetentionLoader.standard();
        LocalDate day = LocalDate.of(2024, 2, 29);
        assertThat(retention.keepUntil(RecordKind.REPAIR, day)).isEqualTo("2039-02-28");
        assertThat(retention.keepUntil(RecordKind.TRANSPORT, day)).isEqualTo("2026-02-28");
        assertThat(retention.keepUntil(RecordKind.REQUALIFICATION, day)).isNull();
        assertThat(retention.records()).hasSize(RecordKind.values().length)
                .allSatisfy(kept -> assertThat(kept.until()).isNotBlank());
    }

    @Test
    void aKindThatIsLeftOutOrToldTwiceIsRefused() {
        assertThatThrownBy(() -> RetentionLoader.of("sources: {}\nrecords:\n  - {record: FILL, until: none}\n"))
                .isInstanceOf(RuleBookException.class).hasMessageContaining("REPAIR");
        assertThatThrownBy(() -> RetentionLoader.of("sources: {}\nrecords:\n  - {record: FILL, until: none}\n"
                + "  - {record: FILL, until: none}\n")).isInstanceOf(RuleBookException.class)
                .hasMessageContaining("twice");
    }
}
