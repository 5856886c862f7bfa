package org.collarbook.platform.database;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Properties;

/** The embedded server's passwords: made once, kept readable by the service's user alone. */
record Credentials(String superuser, String owner, String application, String portal) {

    private static final SecureRandom RANDOM = new SecureRandom();

    static Credentials at(Path file) throws IOException {
        if (Files.notExists(file)) {
            write(file, new Credentials(password(), password(), password(), password()));
        }
        var kept = new Properties();
        try (var reader = Files.newBufferedReader(file)) {
            kept.load(reader);
        }
        return new Credentials(kept.getProperty("superuser"), kept.getProperty("owner"),
                kept.getProperty("application"), kept.getProperty("portal"));
    }

    private static void write(Path file, Credentials credentials) throws IOException {
        var properties = new Properties();
        properties.setProperty("superuser", credentials.superuser);
        properties.setProperty("owner", credentials.owner);
        properties.setProperty("application", credentials.application);
        properties.setProperty("portal", credentials.portal);
        try (Writer writer = Files.newBufferedWriter(createPrivate(file))) {
            properties.store(writer, "Passwords of the embedded database; made by Collarbook, keep them private");
        }
    }

    /** Created private rather than made private, so that there is no moment in which others can read it. */
    static Path createPrivate(Path file) throws IOException {
        Files.deleteIfExists(file);
        return FileSystems.getDefault().supportedFileAttributeViews().contains("posix")
                ? Files.createFile(file,
                        PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")))
                : Files.createFile(file);
    }

    private static String password() {
        var bytes = new byte[24];
        RANDOM.nextBytes(bytes);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    }

    @Override
    public String toString() {
        return "Credentials[not shown]";
    }
}
