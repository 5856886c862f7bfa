package org.collarbook.intake.files;

/** How much a file may unpack to: in all, and by the length that it was handed in with. */
final class Budget {

    /** Deflate packs at most 1 : 1032; ledgers were seen at 1 : 40, so that more than this is no ledger. */
    private static final int MOST_RATIO = 200;
    /** Below it nobody is hurt. */
    private static final long ALWAYS = 64L << 20;

    private final long most;
    private long taken;

    Budget(long most) {
        this.most = most;
    }

    /** Counts {@code bytes} more, which came out of the first {@code packed} of a file or part. */
    void take(long bytes, long unpacked, long packed) {
        taken += bytes;
        if (taken > most) {
            throw FileFault.tooLarge(most);
        }
        if (unpacked > ALWAYS && unpacked / MOST_RATIO > packed) {
            throw FileFault.packedTooWell(MOST_RATIO);
        }
    }
}
