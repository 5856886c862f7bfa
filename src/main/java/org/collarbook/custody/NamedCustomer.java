package org.collarbook.custody;

import java.util.UUID;

/** A customer as others see it. */
public record NamedCustomer(UUID id, int version, String code, String name) {}
