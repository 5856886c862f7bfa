package org.collarbook.intake;

import org.jspecify.annotations.Nullable;

/** Why a row was kept out, or what it leaves open: column, code, what was found, what is accepted. */
record LedgerProblem(String column, boolean refuses, String code, @Nullable String found, String accepted) {}
