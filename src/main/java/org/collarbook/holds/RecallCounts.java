package org.collarbook.holds;

/**
 * What became of the containers that a recall concerns. {@code matched} are those that match it by their marks as they
 * are now, {@code held} those it has placed a hold on, {@code standing} those of them whose hold is not lifted;
 * {@code alreadyHeld} have another hold standing beside it, {@code notCompared} could not be compared.
 */
public record RecallCounts(long matched, long held, long standing, long alreadyHeld, long notCompared) {}
