package org.collarbook.custody;

import java.math.BigDecimal;
import java.time.LocalDate;

import org.collarbook.regulation.Lading;

/** What is declared of a product. */
public record ProductContent(String code, Lading lading, BigDecimal specificGravity, String declaredBy,
        LocalDate declaredOn) {}
