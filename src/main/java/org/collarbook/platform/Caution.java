package org.collarbook.platform;

/** The words that go with every answer somebody may act on with gas in hand. */
public final class Caution {

    public static final String TEXT = "This answer rests on recorded facts; it sees no dent. Look at the container before"
            + " every fill. Follow local codes and the authority having jurisdiction. Leave inspection and repair to"
            + " licensed or approved people. Treat unknown as do-not-fill.";

    private Caution() {}
}
