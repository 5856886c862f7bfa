package org.collarbook.custody;

import java.util.UUID;

/** A site has another customer, zone or jurisdiction, or was renamed; published in the same transaction. */
public record SiteChanged(UUID siteId) {}
