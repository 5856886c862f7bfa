package org.collarbook.platform.jobs;

import java.util.UUID;

/** A job that somebody does, for the how-manyeth time it is begun: only the latest attempt can write. */
public record Claim(UUID id, int attempt) {}
