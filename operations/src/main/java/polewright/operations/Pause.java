package polewright.operations;

import java.time.Duration;

/** Waiting: in the process for real, in tests as long as it takes to do something meanwhile. */
@FunctionalInterface
public interface Pause {
    Pause REAL = new Pause() {
        @Override
        public void of(Duration length) throws InterruptedException {
            Thread.sleep(length.toMillis());
        }

        @Override
        public void atMost(Duration length, Waking news) throws InterruptedException {
            news.await(length);
        }
    };

    void of(Duration length) throws InterruptedException;

    /** Waits for something to happen, no longer than this; where time is made up, that long. */
    default void atMost(Duration length, Waking news) throws InterruptedException {
        of(length);
    }

    /** Something that ends a wait before its time. */
    @FunctionalInterface
    interface Waking {
        /** Returns when it happens, or after the time. */
        void await(Duration longest) throws InterruptedException;
    }
}
