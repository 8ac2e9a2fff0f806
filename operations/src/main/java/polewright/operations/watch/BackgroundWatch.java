package polewright.operations.watch;

import java.util.concurrent.atomic.AtomicBoolean;
import polewright.operations.Workbench;

/** A watch in its own thread, for a program that does other things meanwhile; ends when it is closed. */
public final class BackgroundWatch implements AutoCloseable {
    private static final long LONGEST_END_MILLIS = 20_000;

    private final AtomicBoolean stopped = new AtomicBoolean();
    private final Thread thread;

    private BackgroundWatch(FrameWatch watch, WatchListener listener, Workbench workbench) {
        this.thread = new Thread(
                () -> {
                    try {
                        watch.run(FrameWatch.Until.STOPPED, stopped::get);
                    } catch (RuntimeException broken) {
                        // A bug in this program: the page must report that nothing is watched any more.
                        workbench.err().println("polewright: the frame watch stopped: " + broken);
                        workbench.err().flush();
                        listener.on(new WatchEvent.Noted(
                                "The watch stopped because of an internal error. Start it again; the log is safe."));
                        listener.on(new WatchEvent.Ended());
                    }
                },
                "frame watch");
        thread.setDaemon(true);
    }

    /** Starts watching. */
    public static BackgroundWatch start(FrameWatch watch, WatchListener listener, Workbench workbench) {
        BackgroundWatch running = new BackgroundWatch(watch, listener, workbench);
        running.thread.start();
        return running;
    }

    public boolean isRunning() {
        return thread.isAlive();
    }

    /** Finishes the frame in progress, logs what there is to log, and ends. */
    @Override
    public void close() {
        stopped.set(true);
        try {
            thread.join(LONGEST_END_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
