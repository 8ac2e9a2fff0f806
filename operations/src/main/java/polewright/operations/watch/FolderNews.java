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
 * Wakes a waiting watch when the operating system reports a new or changed file in its folder. A report is only a
 * hint to look: many network folders report nothing, and then the wait takes its full length.
 */
final class FolderNews implements Pause.Waking, AutoCloseable {
    private static final Duration SETTLING = Duration.ofMillis(10);

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
        } catch (IOException | UnsupportedOperationException unsupported) {
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
                // A file being written causes endless reports, and a look takes time too.
                Thread.sleep(SETTLING.toMillis());
                key.pollEvents();
                if (!key.reset()) {
                    // The folder is gone for now: nothing wakes the watch, but looking finds it when it is back.
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
