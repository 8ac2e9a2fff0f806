package polewright.web.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.device.PairedDevices;
import polewright.operations.watch.SettableClock;
import polewright.web.access.PairingCode.Answer;

class PairingTest {
    private final SettableClock clock = new SettableClock(Instant.parse("2026-11-26T20:00:00Z"));

    @TempDir
    private Path folder;

    @Test
    void code_pairsOneDevice_withinTenMinutes() {
        PairingCode old = PairingCode.fresh(clock);
        clock.advance(PairingCode.LIFE.minusSeconds(1));
        assertThat(old.isVoid()).isFalse();
        clock.advance(Duration.ofSeconds(1));
        assertThat(old.guess(old.grouped(), "192.0.2.7")).isEqualTo(Answer.VOID);

        PairingCode code = PairingCode.fresh(clock);
        assertThat(code.guess(code.grouped(), "192.0.2.7")).isEqualTo(Answer.RIGHT);
        assertThat(code.guess(code.grouped(), "192.0.2.8")).isEqualTo(Answer.VOID);
    }

    @Test
    void wrongCode_doublesTheDelayForItsAddressOnly() {
        PairingCode code = PairingCode.fresh(clock);
        for (int seconds = 1; seconds <= 4; seconds *= 2) {
            assertThat(code.guess("wrong", "192.0.2.7")).isEqualTo(Answer.WRONG);
            clock.advance(Duration.ofSeconds(seconds).minusMillis(1));
            assertThat(code.guess(code.grouped(), "192.0.2.7")).isEqualTo(Answer.TOO_SOON);
            clock.advance(Duration.ofMillis(1));
        }
        assertThat(code.guess("wrong", "192.0.2.8")).isEqualTo(Answer.WRONG);
        assertThat(code.guess(code.grouped().toLowerCase(java.util.Locale.ROOT), "192.0.2.9"))
                .isEqualTo(Answer.RIGHT);
    }

    @Test
    void pairing_isPrivateToItsOwner_andSurvivesARestart() throws Exception {
        String token = new PairedDevices(folder).pair("Tent", clock.instant()).token();
        Path file = folder.resolve(PairedDevices.FILE);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
        PairedDevices afterRestart = new PairedDevices(folder);
        assertThat(afterRestart.holderOf(token, clock.instant())).isPresent();
        afterRestart.revoke("tent");
        assertThat(new PairedDevices(folder).holderOf(token, clock.instant())).isEmpty();
    }
}
