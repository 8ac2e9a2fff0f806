package polewright.operations.watch;

/** Is told what happens while a folder is watched, by the thread that watches: what takes long is done elsewhere. */
@FunctionalInterface
public interface WatchListener {
    void on(WatchEvent event);
}
