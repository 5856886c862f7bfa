package org.collarbook.platform.jobs;

import org.jspecify.annotations.Nullable;

/** The job cannot be done, and another attempt would not help: code and sentence are told with it. */
public class JobFailure extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final String code;

    public JobFailure(String code, @Nullable String detail) {
        super(detail);
        this.code = code;
    }

    public String code() {
        return code;
    }
}
