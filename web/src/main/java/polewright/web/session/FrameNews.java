package polewright.web.session;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.LongConsumer;
import java.util.function.UnaryOperator;
import polewright.operations.watch.LiveView;

/** The current frame status and the pages that are notified when it changes. Thread-safe. */
final class FrameNews {
    private final List<LongConsumer> listeners = new CopyOnWriteArrayList<>();
    private final AtomicReference<FrameStatus> status = new AtomicReference<>(FrameStatus.NOTHING);

    FrameStatus status() {
        return Objects.requireNonNull(status.get());
    }

    /** Notifies this listener of every change, with the new status number. It must not block. */
    void addListener(LongConsumer listener) {
        listeners.add(listener);
    }

    void removeListener(LongConsumer listener) {
        listeners.remove(listener);
    }

    void arrived(LiveView.Shot shot) {
        change(status -> new FrameStatus(status.number() + 1, Optional.of(shot), true, ""));
    }

    /** Call when a new watch has started: the newest frame then belongs to the previous one. */
    void outdated() {
        change(status -> new FrameStatus(status.number() + 1, status.newest(), false, ""));
    }

    void note(String line) {
        change(status -> status.note().equals(line)
                ? status
                : new FrameStatus(status.number() + 1, status.newest(), status.isCurrent(), line));
    }

    private void change(UnaryOperator<FrameStatus> how) {
        long before = status().number();
        long now = status.updateAndGet(how).number();
        if (now != before) {
            listeners.forEach(listener -> listener.accept(now));
        }
    }
}
