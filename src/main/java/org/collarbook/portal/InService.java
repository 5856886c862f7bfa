package org.collarbook.portal;

import java.util.List;

import org.collarbook.regulation.Assessment;
import org.jspecify.annotations.Nullable;

/** Whether it is in service, and if not, why: sentences from {@code reasons}. */
record InService(Word word, @Nullable List<String> why) {

    /** {@code NOT_ESTABLISHED}: nobody took it out, and it is not known or not allowed that it be used; as good as out. */
    enum Word {
        IN_SERVICE,
        OUT_OF_SERVICE,
        NOT_ESTABLISHED
    }

    static InService of(Assessment assessment, List<PlainReason> reasons) {
        var word = switch (assessment.status()) {
            case CONDEMNED, REJECTED, ON_HOLD -> Word.OUT_OF_SERVICE;
            case UNDETERMINED, OTHER_AUTHORITY, OVERDUE, USE_UP, DUE_THIS_MONTH, IN_DATE, NOT_REQUIRED ->
                assessment.mayUse().allowed() ? Word.IN_SERVICE : Word.NOT_ESTABLISHED;
        };
        return new InService(word, switch (word) {
            case IN_SERVICE -> null;
            case OUT_OF_SERVICE -> texts(reasons.stream().filter(PlainReason::keepsOut).toList());
            case NOT_ESTABLISHED -> texts(reasons);
        });
    }

    private static List<String> texts(List<PlainReason> reasons) {
        return reasons.stream().map(PlainReason::text).distinct().toList();
    }
}
