package org.collarbook.inspection.bench;

import org.jspecify.annotations.Nullable;

/** One line of a visual inspection. */
public record Checked(VisualItem item, Finding finding, @Nullable String note) {

    public enum Finding {
        SATISFACTORY,
        DEFECT,
        NOT_APPLICABLE
    }

    boolean isDefectIn(VisualItem which) {
        return finding == Finding.DEFECT && item == which;
    }
}
