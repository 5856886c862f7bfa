package org.collarbook.access;

import java.util.Collection;
import java.util.List;
import java.util.UUID;

/** Asked before a key is confined to a customer; answered by the module that knows customers and sites. */
public interface ScopePlaces {

    boolean isKnown(CustomerId customer);

    /** Those of the sites that are not the customer's, whether they are another's or nobody's. */
    List<UUID> foreign(CustomerId customer, Collection<UUID> sites);
}
