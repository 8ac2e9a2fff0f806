package polewright.app;

import java.time.Duration;

/** Waiting: in the process for real, in tests as long as it takes to do something meanwhile. */
@FunctionalInterface
public interface Pause {
    Pause REAL = length -> Thread.sleep(length.toMillis());

    void of(Duration length) throws InterruptedException;
}
