package org.collarbook.platform;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** SHA-256, which every Java platform has. */
public final class Sha256 {

    private Sha256() {}

    public static byte[] of(byte[] bytes) {
        return start().digest(bytes);
    }

    /** For what comes in pieces. */
    public static MessageDigest start() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
