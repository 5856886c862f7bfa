package org.collarbook.custody;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.UUID;

import org.collarbook.regulation.Lading;

/** What is filled in, with the specific gravity at 60 °F that a named person declares for it. */
public record Product(UUID id, int version, String code, Lading lading, BigDecimal specificGravity, String declaredBy,
        LocalDate declaredOn) {}
