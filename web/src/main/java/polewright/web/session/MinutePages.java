package polewright.web.session;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import polewright.web.view.Section;

/**
 * Sections that take long to make and are the same for all requests within a minute. In the following minute, a
 * request gets the previous result while the next one is computed; a later request waits for it. Thread-safe.
 */
final class MinutePages {
    // Ground and Tonight in two palettes, and earlier results for settings that have since changed.
    private static final int MOST = 8;

    private final Map<Object, Page> pages = new LinkedHashMap<>(16, 0.75f, true);

    private record Made(Instant minute, List<Section> sections) {}

    /** One cached section list. */
    private static final class Page {
        private final ReentrantLock making = new ReentrantLock();
        private final AtomicBoolean isRenewed = new AtomicBoolean();
        private volatile @Nullable Made sections;

        private List<Section> at(Instant minute, Supplier<List<Section>> how) {
            Made last = sections;
            if (last != null && last.minute().equals(minute)) {
                return last.sections();
            }
            if (last != null && last.minute().equals(minute.minus(1, ChronoUnit.MINUTES))) {
                renew(minute, how);
                return last.sections();
            }
            return compute(minute, how);
        }

        private List<Section> compute(Instant minute, Supplier<List<Section>> how) {
            try {
                making.lockInterruptibly();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new CancellationException("the page is no longer wanted");
            }
            try {
                Made last = sections;
                if (last == null || !last.minute().equals(minute)) {
                    last = new Made(minute, List.copyOf(how.get()));
                    sections = last;
                }
                return last.sections();
            } finally {
                making.unlock();
            }
        }

        private void renew(Instant minute, Supplier<List<Section>> how) {
            if (!isRenewed.compareAndSet(false, true)) {
                return;
            }
            Thread thread = new Thread(
                    () -> {
                        try {
                            compute(minute, how);
                        } catch (RuntimeException failure) {
                            // No request waits for this one.
                        } finally {
                            isRenewed.set(false);
                        }
                    },
                    "page of the next minute");
            thread.setDaemon(true);
            thread.start();
        }
    }

    /**
     * The sections for the current minute.
     *
     * @param from everything they depend on, except the time
     */
    List<Section> of(Object from, Instant now, Supplier<List<Section>> how) {
        return page(from).at(now.truncatedTo(ChronoUnit.MINUTES), how);
    }

    private synchronized Page page(Object from) {
        Page page = pages.computeIfAbsent(from, first -> new Page());
        if (pages.size() > MOST) {
            pages.remove(pages.keySet().iterator().next());
        }
        return page;
    }
}
