package org.collarbook.schedule.packet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Collections;
import java.util.List;
import java.util.UUID;

import org.collarbook.platform.Page;
import org.collarbook.platform.PageSize;
import org.collarbook.platform.ProblemException;
import org.junit.jupiter.api.Test;

/** A list that a packet cannot hold is refused with the way out, not cut. */
class WholeTests {

    private static final UUID ID = new UUID(0, 7);

    private static List<String> entries(int count) {
        return Collections.nCopies(count, "one");
    }

    @Test
    void aThousandAreToldAndNotOneMore() {
        assertThat(Whole.list("its holds", ID, "holds", rows -> entries(PageSize.MOST))).hasSize(PageSize.MOST);
        assertThatThrownBy(() -> Whole.list("its holds", ID, "holds", rows -> entries(rows.limit())))
                .isInstanceOf(ProblemException.class).extracting("problem.code", "problem.detail").satisfies(told -> {
                    assertThat(told.toString()).contains("LIST_TOO_LONG", "/api/containers/" + ID + "/holds");
                });
    }

    @Test
    void aPageWithAnotherAfterItIsNotAWholeList() {
        assertThat(Whole.page("its identity", ID, "identity", rows -> new Page<>(entries(3), null))).hasSize(3);
        assertThatThrownBy(() -> Whole.page("its identity", ID, "identity", rows -> new Page<>(entries(3), "more")))
                .isInstanceOf(ProblemException.class);
    }
}
