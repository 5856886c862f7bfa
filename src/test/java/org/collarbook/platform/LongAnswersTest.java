package org.collarbook.platform;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.util.concurrent.atomic.AtomicInteger;

import org.junit.jupiter.api.Test;
import org.springframework.mock.web.MockHttpServletRequest;

class LongAnswersTest {

    private final LongAnswers answers = new LongAnswers(2);
    private final MockHttpServletRequest request = new MockHttpServletRequest();

    @Test
    void soManyAreSentAtOnce() throws IOException {
        var sent = new AtomicInteger();
        answers.send(request, () -> answers.send(request, () -> {
            sent.incrementAndGet();
            assertThatThrownBy(() -> answers.send(request, sent::incrementAndGet))
                    .isInstanceOfSatisfying(ProblemException.class,
                            refused -> assertThat(refused.problem().code()).isEqualTo("BUSY"));
        }));
        assertThatThrownBy(() -> answers.send(request, () -> {
            throw new IOException("gone");
        })).isInstanceOf(IOException.class);
        answers.send(request, () -> answers.send(request, sent::incrementAndGet));
        assertThat(sent).hasValue(2);
    }
}
