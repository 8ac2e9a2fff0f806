package polewright.operations.camera;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import polewright.image.decode.DecodeDeadline;
import polewright.sky.InputRefused;

/** A decode that never ends is refused by name, and the next frame is decoded. */
@Tag("slow")
class FrameDecodingTest {
    private static final Duration MOMENT = Duration.ofMillis(50);
    private static final Duration LONG = Duration.ofSeconds(60);

    private final CountDownLatch end = new CountDownLatch(1);

    @AfterEach
    void waitForAbandonedDecodes() {
        end.countDown();
        // The next test counts from none again.
        while (Thread.getAllStackTraces().keySet().stream()
                .anyMatch(thread -> thread.getName().equals("decoder of stuck.jpg"))) {
            Thread.onSpinWait();
        }
    }

    private String neverEnding(DecodeDeadline unasked) {
        while (true) {
            try {
                end.await();
                return "at last";
            } catch (InterruptedException deaf) {
                // A library that ignores interruption.
            }
        }
    }

    private void assertNotDecoded() {
        assertThatThrownBy(() -> FrameDecoding.within(MOMENT, "stuck.jpg", this::neverEnding))
                .isInstanceOf(InputRefused.class)
                .hasMessage("stuck.jpg: after 0 s it is still not decoded, so it is probably damaged."
                        + " Copy it again from the camera, or take another frame.");
    }

    private static void assertTheNextIsDecoded() {
        String decoded = FrameDecoding.within(LONG, "dusk.fits", deadline -> "pixels");
        assertThat(decoded).isEqualTo("pixels");
    }

    @Test
    void workInTime_isReturned() {
        assertTheNextIsDecoded();
    }

    @Test
    void refusal_isPassedOnUnchanged() {
        assertThatThrownBy(() -> FrameDecoding.within(LONG, "dusk.fits", deadline -> {
                    throw new InputRefused("dusk.fits: the file is empty", "take it again");
                }))
                .isInstanceOf(InputRefused.class)
                .hasMessage("dusk.fits: the file is empty. Take it again.");
    }

    @Test
    void interruptibleWork_endsAndIsNotAbandoned() {
        for (int frame = 0; frame < 5; frame++) {
            assertThatThrownBy(() -> FrameDecoding.within(MOMENT, "slow.jpg", deadline -> {
                        while (true) {
                            deadline.check();
                        }
                    }))
                    .isInstanceOf(InputRefused.class)
                    .hasMessageStartingWith("slow.jpg: after ")
                    .hasMessageContaining(" s it is still not decoded, so it is probably damaged");
        }
        assertTheNextIsDecoded();
    }

    @Test
    void endlessWork_isRefused_andTheNextFrameIsDecoded() {
        assertNotDecoded();
        assertTheNextIsDecoded();
    }

    @Test
    void onlyAFewDecodes_areAbandoned() {
        assertNotDecoded();
        assertNotDecoded();
        assertThatThrownBy(() -> FrameDecoding.within(LONG, "dusk.fits", deadline -> "pixels"))
                .isInstanceOf(InputRefused.class)
                .hasMessage("dusk.fits: 2 damaged frames before it are still being decoded."
                        + " Stop Polewright and start it again, then take this frame again.");
        waitForAbandonedDecodes();
        assertTheNextIsDecoded();
    }
}
