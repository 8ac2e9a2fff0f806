package polewright.operations.watch;

/** Receives the events of watching a folder, in the watching thread: slow work must be done elsewhere. */
@FunctionalInterface
public interface WatchListener {
    void on(WatchEvent event);
}
