package org.collarbook.inspection.bench;

import java.math.BigDecimal;
import java.util.List;

import org.collarbook.regulation.Requalification.Result;
import org.jspecify.annotations.Nullable;

/** The result of a record as computed, with every reason; null for what was not measured or is not held. */
public record Judgement(Result result, @Nullable BigDecimal permanentPercent, @Nullable BigDecimal limitPercent,
        @Nullable BigDecimal minimumPsig, @Nullable BigDecimal tareLossPercent, List<Remark> remarks) {

    public Judgement {
        remarks = List.copyOf(remarks);
    }
}
