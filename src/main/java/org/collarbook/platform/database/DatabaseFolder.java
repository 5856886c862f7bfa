package org.collarbook.platform.database;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.concurrent.TimeUnit;

import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The folder that holds the embedded server's data, held by one running service at a time. Taking it clears away what a
 * killed service leaves behind: the database server that went on without it, or the note of one that died with it.
 */
final class DatabaseFolder implements AutoCloseable {

    private static final Logger log = LoggerFactory.getLogger(DatabaseFolder.class);
    private static final Duration STOP = Duration.ofSeconds(60);

    private final Path root;
    private final FileChannel lockFile;
    private final FileLock lock;

    private DatabaseFolder(Path root, FileChannel lockFile, FileLock lock) {
        this.root = root;
        this.lockFile = lockFile;
        this.lock = lock;
    }

    static DatabaseFolder take(Path given) {
        var root = given.toAbsolutePath().normalize();
        try {
            createPrivate(root);
            var lockFile = FileChannel.open(root.resolve("in-use.lock"), StandardOpenOption.CREATE,
                    StandardOpenOption.WRITE);
            var lock = tryLock(lockFile);
            if (lock == null) {
                lockFile.close();
                throw new DatabaseFolderException("Another running Collarbook holds the data folder "
                        + root + ". Stop it, or start this one in another folder or with"
                        + " --collarbook.database.folder=…, or give both one database by spring.datasource.url.");
            }
            var folder = new DatabaseFolder(root, lockFile, lock);
            folder.clearOrphan();
            return folder;
        } catch (IOException e) {
            throw new DatabaseFolderException("The data folder " + root + " cannot be used: " + e);
        }
    }

    private static @Nullable FileLock tryLock(FileChannel lockFile) throws IOException {
        try {
            return lockFile.tryLock();
        } catch (OverlappingFileLockException heldByThisProcess) {
            return null;
        }
    }

    /** For the service's user alone: besides the data it holds the server's binaries, which are run. */
    private static void createPrivate(Path root) throws IOException {
        Files.createDirectories(root);
        if (FileSystems.getDefault().supportedFileAttributeViews().contains("posix")) {
            Files.setPosixFilePermissions(root, PosixFilePermissions.fromString("rwx------"));
        }
    }

    Path cluster() {
        return root.resolve("cluster");
    }

    Path binaries() {
        return root.resolve("server");
    }

    Path resolve(String file) {
        return root.resolve(file);
    }

    private void clearOrphan() throws IOException {
        var note = cluster().resolve("postmaster.pid");
        if (!Files.exists(note)) {
            return;
        }
        var pid = firstLine(note);
        var process = pid == null ? null : ProcessHandle.of(pid).filter(this::servesThisCluster).orElse(null);
        if (process == null) {
            log.warn("Removing {}: the database server it names is gone (the service or the machine was killed)", note);
            Files.delete(note);
            return;
        }
        log.warn("Stopping the database server {} that a killed service left running on {}", pid, cluster());
        process.destroy();
        try {
            process.onExit().get(STOP.toSeconds(), TimeUnit.SECONDS);
        } catch (Exception e) {
            throw new DatabaseFolderException("The database server " + pid + " on " + cluster()
                    + " was left by a killed service and does not stop. Stop it by hand (kill -INT " + pid + ").");
        }
    }

    private static @Nullable Long firstLine(Path note) throws IOException {
        var lines = Files.readAllLines(note);
        try {
            return lines.isEmpty() ? null : Long.valueOf(lines.getFirst().strip());
        } catch (NumberFormatException garbled) {
            return null;
        }
    }

    /** A pid may have been given to another program since: only a server on this very folder is ours to stop. */
    private boolean servesThisCluster(ProcessHandle process) {
        var info = process.info();
        var line = info.commandLine().orElseGet(() -> info.command().orElse(""));
        return process.isAlive() && line.contains("postgres")
                && line.contains(cluster().toString());
    }

    @Override
    public void close() {
        try {
            lock.release();
            lockFile.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
