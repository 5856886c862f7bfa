package org.collarbook.intake.files;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.function.LongSupplier;

/** What is being unpacked, refused once it is more than a ledger can be. */
final class Metered extends FilterInputStream {

    private final Budget budget;
    private final LongSupplier packed;
    private long unpacked;

    /** {@code packed} tells how long that is which was unpacked so far. */
    Metered(InputStream in, Budget budget, LongSupplier packed) {
        super(in);
        this.budget = budget;
        this.packed = packed;
    }

    @Override
    public int read() throws IOException {
        var one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int count = super.read(buffer, offset, length);
        if (count > 0) {
            unpacked += count;
            budget.take(count, unpacked, packed.getAsLong());
        }
        return count;
    }

    @Override
    public boolean markSupported() {
        return false;
    }
}
