package org.collarbook.platform.jobs;

import java.util.Arrays;
import java.util.List;

import org.jspecify.annotations.Nullable;

/** Columns of a job's own table with what goes into them: {@code "stage = ?, cylinders_read = ?"} and two values. */
public record Columns(String assignments, List<@Nullable Object> values) {

    static final Columns NONE = set("");

    public static Columns set(String assignments, @Nullable Object... values) {
        return new Columns(assignments, Arrays.asList(values));
    }

    /** To go behind other assignments. */
    String further() {
        return assignments.isEmpty() ? "" : ", " + assignments;
    }
}
