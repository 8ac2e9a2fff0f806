package polewright.operations;

import java.time.Duration;

/** Waiting: real time in the process; in tests, as long as it takes to do something meanwhile. */
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

    /** Waits for an event, at most for this time; with simulated time, for all of it. */
    default void atMost(Duration length, Waking news) throws InterruptedException {
        of(length);
    }

    /** An event that ends a wait early. */
    @FunctionalInterface
    interface Waking {
        /** Returns when it happens, or after this time. */
        void await(Duration longest) throws InterruptedException;
    }
}
