package polewright.web.session;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.LongConsumer;
import java.util.function.UnaryOperator;
import polewright.operations.watch.LiveView;

/** The current frame status and the pages that are notified when it changes. Safe for use by several threads. */
final class FrameNews {
    private final List<LongConsumer> listeners = new CopyOnWriteArrayList<>();
    private final AtomicReference<FrameStatus> stand = new AtomicReference<>(FrameStatus.NOTHING);

    FrameStatus stand() {
        return Objects.requireNonNull(stand.get());
    }

    /** Notifies this listener of every change, with the new status number. It must not block. */
    void tell(LongConsumer listener) {
        listeners.add(listener);
    }

    void forget(LongConsumer listener) {
        listeners.remove(listener);
    }

    void arrived(LiveView.Shot shot) {
        change(stand -> new FrameStatus(stand.number() + 1, Optional.of(shot), true, ""));
    }

    /** A new watch has started: the newest frame belongs to the previous one. */
    void outdated() {
        change(stand -> new FrameStatus(stand.number() + 1, stand.newest(), false, ""));
    }

    void note(String line) {
        change(stand -> stand.note().equals(line)
                ? stand
                : new FrameStatus(stand.number() + 1, stand.newest(), stand.isCurrent(), line));
    }

    private void change(UnaryOperator<FrameStatus> how) {
        long before = stand().number();
        long now = stand.updateAndGet(how).number();
        if (now != before) {
            listeners.forEach(listener -> listener.accept(now));
        }
    }
}
