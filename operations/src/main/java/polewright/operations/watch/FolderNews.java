package polewright.operations.watch;

import java.io.IOException;
import java.nio.file.ClosedWatchServiceException;
import java.nio.file.Path;
import java.nio.file.StandardWatchEventKinds;
import java.nio.file.WatchKey;
import java.nio.file.WatchService;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import polewright.operations.Pause;

/**
 * Wakes whoever waits for a folder when the system tells that a file in it is new or has changed. What is told is only
 * taken for a hint to look: many folders on other machines tell nothing, and then the wait takes its whole length.
 */
final class FolderNews implements Pause.Waking, AutoCloseable {
    private static final Duration GATHERING = Duration.ofMillis(10);

    private final @Nullable WatchService service;

    private FolderNews(@Nullable WatchService service) {
        this.service = service;
    }

    static FolderNews of(Path folder) {
        WatchService service = null;
        try {
            service = folder.getFileSystem().newWatchService();
            folder.register(service, StandardWatchEventKinds.ENTRY_CREATE, StandardWatchEventKinds.ENTRY_MODIFY);
            return new FolderNews(service);
        } catch (IOException | UnsupportedOperationException tellsNothing) {
            FolderNews silent = new FolderNews(null);
            close(service);
            return silent;
        }
    }

    @Override
    public void await(Duration longest) throws InterruptedException {
        if (service == null) {
            Thread.sleep(longest.toMillis());
            return;
        }
        try {
            WatchKey key = service.poll(longest.toMillis(), TimeUnit.MILLISECONDS);
            if (key != null) {
                // A file that is being written tells of itself without end: a look takes a while too.
                Thread.sleep(GATHERING.toMillis());
                key.pollEvents();
                if (!key.reset()) {
                    // The folder is gone for now: nothing wakes any more, but looking finds it when it is back.
                    Thread.sleep(longest.toMillis());
                }
            }
        } catch (ClosedWatchServiceException e) {
            Thread.sleep(longest.toMillis());
        }
    }

    @Override
    public void close() {
        close(service);
    }

    private static void close(@Nullable WatchService service) {
        try {
            if (service != null) {
                service.close();
            }
        } catch (IOException e) {
            // Nothing waits for it any more.
        }
    }
}
