package org.collarbook.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

import org.collarbook.custody.SiteKind;
import org.collarbook.intake.KnownSite.KnownCustomer;
import org.collarbook.intake.LedgerEntry.GivenSite;
import org.jspecify.annotations.Nullable;

/**
 * The places that one batch of rows speaks of. A ledger opens sites and customers that are not known; it never renames
 * or moves one that is: the remark SITE_KEPT says where the two differ.
 */
final class BatchPlaces {

    private final Map<String, KnownSite> sites;
    private final Map<String, KnownCustomer> customers;
    private final Terms terms;
    private final List<KnownSite> newSites = new ArrayList<>();
    private final List<KnownCustomer> newCustomers = new ArrayList<>();

    BatchPlaces(Map<String, KnownSite> sites, Map<String, KnownCustomer> customers, Terms terms) {
        this.sites = sites;
        this.customers = customers;
        this.terms = terms;
    }

    /** False when the row cannot stand there; a site that the row may open is opened. */
    boolean admit(GivenSite given, Problems problems) {
        var known = sites.get(given.code());
        if (known == null) {
            open(given, problems);
        } else {
            compare(given, known, problems);
        }
        return !problems.areKeepingOut();
    }

    private void open(GivenSite given, Problems problems) {
        var kind = given.kind();
        if (kind == null) {
            problems.refuse(LedgerColumn.SITE_KIND, "MISSING", null, "CUSTOMER, DEPOT, VEHICLE or REQUALIFIER: site "
                    + given.code() + " is not in the register");
        } else if ((kind == SiteKind.CUSTOMER) != (given.customer() != null)) {
            problems.refuse(LedgerColumn.CUSTOMER, given.customer() == null ? "MISSING" : "CUSTOMER_NOT_ALLOWED",
                    given.customer(), "a customer for a site of kind CUSTOMER, and for no other");
        }
        var zone = given.zone() == null ? terms.zone() : given.zone();
        var jurisdiction = given.jurisdiction() == null ? terms.jurisdiction() : given.jurisdiction();
        if (zone == null) {
            problems.refuse(LedgerColumn.SITE, "SITE_NEEDS_ZONE", given.code(),
                    "a site that the register knows; site_zone,"
                            + " or a declaration with the time zone of the sites that the ledger opens");
        }
        if (jurisdiction == null) {
            problems.refuse(LedgerColumn.SITE, "SITE_NEEDS_JURISDICTION", given.code(), "a site that the register"
                    + " knows; site_jurisdiction, or a declaration with that of the sites that the ledger opens");
        }
        if (kind != null && zone != null && jurisdiction != null && !problems.areKeepingOut()) {
            var site = new KnownSite(null, given.code(), given.name() == null ? given.code() : given.name(), kind,
                    customer(given, problems), given.coordinates(), zone, jurisdiction, given.address());
            sites.put(site.code(), site);
            newSites.add(site);
        }
    }

    private @Nullable KnownCustomer customer(GivenSite given, Problems problems) {
        var code = given.customer();
        if (code == null) {
            return null;
        }
        var known = customers.get(code);
        if (known == null) {
            var opened = new KnownCustomer(null, code, given.customerName() == null ? code : given.customerName());
            customers.put(code, opened);
            newCustomers.add(opened);
            return opened;
        }
        keep(LedgerColumn.CUSTOMER_NAME, given.customerName(), known.name(), problems);
        return known;
    }

    private static void compare(GivenSite given, KnownSite known, Problems problems) {
        if (given.kind() != null && given.kind() != known.kind()) {
            problems.refuse(LedgerColumn.SITE_KIND, "SITE_CONTRADICTS", given.kind().name(), known.kind()
                    + ", as site " + known.code() + " is known; or another site code");
        }
        var customer = known.customer();
        if (given.customer() != null && (customer == null || !given.customer().equals(customer.code()))) {
            problems.refuse(LedgerColumn.CUSTOMER, "SITE_CONTRADICTS", given.customer(), customer == null
                    ? "no customer: site " + known.code() + " is not a customer's"
                    : customer.code() + ", whose site " + known.code() + " is; or another site code");
            return;
        }
        keep(LedgerColumn.SITE_NAME, given.name(), known.name(), problems);
        keep(LedgerColumn.CUSTOMER_NAME, given.customerName(), customer == null ? null : customer.name(), problems);
        keep(LedgerColumn.SITE_ADDRESS, given.address(), known.address(), problems);
        keep(LedgerColumn.SITE_ZONE, given.zone() == null ? null : given.zone().getId(), known.zone().getId(),
                problems);
        keep(LedgerColumn.SITE_JURISDICTION, given.jurisdiction() == null ? null : given.jurisdiction().code(),
                known.jurisdiction().code(), problems);
        if (given.coordinates() != null && !given.coordinates().equals(known.coordinates())) {
            problems.remark(LedgerColumn.LATITUDE, "SITE_KEPT", given.coordinates().latitude() + ", "
                    + given.coordinates().longitude(), "the register keeps what it has; change the site itself");
        }
    }

    private static void keep(LedgerColumn column, @Nullable String given, @Nullable String known, Problems problems) {
        if (given != null && !given.equals(known)) {
            problems.remark(column, "SITE_KEPT", given, "the register keeps " + known + "; change the site or the"
                    + " customer itself");
        }
    }

    /** The site of that code, known or opened. */
    @Nullable
    KnownSite site(String code) {
        return sites.get(code);
    }

    List<KnownSite> newSites() {
        return newSites;
    }

    List<KnownCustomer> newCustomers() {
        return newCustomers;
    }
}
