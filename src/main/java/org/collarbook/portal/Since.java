package org.collarbook.portal;

import java.time.Instant;

/**
 * What a portal had been told: the database's snapshot, the moment that gave each site its day, and the rule book that
 * answered. What one of the three could not see yet has changed since.
 */
record Since(String snapshot, Instant takenAt, int ruleBook) {}
