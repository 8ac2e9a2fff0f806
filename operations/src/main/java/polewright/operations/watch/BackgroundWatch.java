package polewright.operations.watch;

import java.util.concurrent.atomic.AtomicBoolean;
import polewright.operations.Workbench;

/** A watch on a thread of its own, for a program that has other things to do; ends when it is closed. */
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
                        // A fault of this program: the page has to say that nothing is watched any more.
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

    /** Begins to watch. */
    public static BackgroundWatch start(FrameWatch watch, WatchListener listener, Workbench workbench) {
        BackgroundWatch running = new BackgroundWatch(watch, listener, workbench);
        running.thread.start();
        return running;
    }

    public boolean isRunning() {
        return thread.isAlive();
    }

    /** Brings the frame that is under way to its end, logs what there is to log, and ends. */
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
