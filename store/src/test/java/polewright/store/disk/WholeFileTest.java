package polewright.store.disk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.management.BufferPoolMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {
    private static final int FRAME_BYTES = 8_000_001;

    @TempDir
    private Path folder;

    private static long nativeBytes() {
        return ManagementFactory.getPlatformMXBeans(BufferPoolMXBean.class).stream()
                .filter(pool -> pool.getName().equals("direct"))
                .mapToLong(BufferPoolMXBean::getMemoryUsed)
                .sum();
    }

    private byte[] written(int bytes) throws IOException {
        byte[] content = new byte[bytes];
        new Random(5).nextBytes(content);
        Files.write(folder.resolve("frame"), content);
        return content;
    }

    @Test
    void readingThread_keepsNoNativeMemoryOfTheFilesSize() throws Exception {
        byte[] content = written(FRAME_BYTES);
        ExecutorService thread = Executors.newSingleThreadExecutor();
        long before = nativeBytes();
        try {
            byte[] read =
                    thread.submit(() -> WholeFile.read(folder.resolve("frame"))).get();

            assertThat(read).isEqualTo(content);
            assertThat(nativeBytes() - before).isLessThan(FRAME_BYTES / 20);
        } finally {
            thread.shutdown();
        }
    }

    @Test
    void emptyFile_isRead() throws Exception {
        written(0);
        assertThat(WholeFile.read(folder.resolve("frame"))).isEmpty();
    }
}
