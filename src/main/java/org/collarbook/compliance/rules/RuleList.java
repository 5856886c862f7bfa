package org.collarbook.compliance.rules;

import java.time.LocalDate;
import java.util.List;

import org.collarbook.compliance.RuleBookAnswer;

/** The rules asked for, by id, as they stand on {@code asOf}. */
record RuleList(LocalDate asOf, RuleBookAnswer ruleBook, int count, List<RuleSummary> items) {}
