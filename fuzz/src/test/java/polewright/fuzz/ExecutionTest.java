package polewright.fuzz;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import polewright.sky.InputRefused;

/** What the harness accepts and what it reports: a fuzzer that cannot find anything proves nothing. */
class ExecutionTest {
    private static final Allowance ONE_MEGABYTE = new Allowance(Allowance.MEGABYTE, 0);
    private static final byte[] INPUT = {1, 2, 3};

    private static void run(Execution.Target target) {
        Execution.of(target, INPUT, ONE_MEGABYTE);
    }

    @Test
    void anAnswerAndARefusal_pass() {
        assertThatCode(() -> run(input -> {})).doesNotThrowAnyException();
        assertThatCode(() -> run(input -> {
                    throw new InputRefused("three bytes", "give four");
                }))
                .doesNotThrowAnyException();
    }

    @Test
    void anotherException_isAFinding() {
        assertThatThrownBy(() -> run(input -> {
                    throw new IllegalStateException("slipped");
                }))
                .hasMessage("slipped");
    }

    @Test
    void moreMemoryThanAllowed_isAFinding() {
        assertThatThrownBy(() -> run(input -> {
                    if (new byte[2_000_000].length == input.length) {
                        throw new IllegalStateException();
                    }
                }))
                .isInstanceOf(Finding.class)
                .hasMessageContaining("for an input of 3");
    }

    @Test
    void moreMemoryTheFirstTimeOnly_passes() {
        AtomicInteger calls = new AtomicInteger();
        assertThatCode(() -> run(input -> {
                    int bytes = calls.incrementAndGet() == 1 ? 2_000_000 : 10;
                    if (new byte[bytes].length == input.length) {
                        throw new IllegalStateException();
                    }
                }))
                .doesNotThrowAnyException();
    }

    @Test
    void moreTimeThanAllowed_isAFinding() {
        Execution.Target slow = input -> {
            for (double sum = 0; sum < 1e7; sum += 1 + Math.sin(sum) / 2) {
                if (sum == input.length) {
                    throw new IllegalStateException();
                }
            }
        };
        assertThatThrownBy(() -> Execution.of(slow, INPUT, ONE_MEGABYTE, Duration.ofMillis(20)))
                .isInstanceOf(Finding.class)
                .hasMessageContaining(" ms, of 20,");
    }

    @Test
    void ownBugBehindARefusal_isAFinding_aLibrarysIsNot() {
        assertThatThrownBy(
                        () -> FrameTargets.requireDeclared(refusedBecause(stumbledIn("polewright.image.decode.Tiles"))))
                .isInstanceOf(Finding.class);
        assertThatThrownBy(() -> FrameTargets.requireDeclared(refusedBecause(new StackOverflowError())))
                .isInstanceOf(Finding.class);
        assertThatCode(() -> FrameTargets.requireDeclared(refusedBecause(stumbledIn("nom.tam.fits.Header"))))
                .doesNotThrowAnyException();
    }

    private static InputRefused refusedBecause(Throwable cause) {
        InputRefused refused = new InputRefused("it is damaged", "copy it again");
        refused.initCause(cause);
        return refused;
    }

    private static RuntimeException stumbledIn(String ownersName) {
        RuntimeException stumble = new IndexOutOfBoundsException();
        stumble.setStackTrace(new StackTraceElement[] {
            new StackTraceElement("java.nio.ByteBuffer", "getInt", "ByteBuffer.java", 1),
            new StackTraceElement(ownersName, "of", "Owner.java", 2)
        });
        return stumble;
    }
}
