package org.collarbook.custody;

/** What stands behind a place: a customer's premises, the distributor's own, a vehicle, a requalifier's shop. */
public enum SiteKind {
    CUSTOMER, DEPOT, VEHICLE, REQUALIFIER
}
