package polewright.operations.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.OperationFailed;

/** A folder as capture programs treat it: each frame is delivered once, when it is complete. */
class FrameFolderTest {
    @TempDir
    private Path folder;

    private final SettableClock clock = new SettableClock(Instant.parse("2026-11-25T20:00:00Z"));
    private FrameFolder frames;

    @BeforeEach
    void watch() {
        frames = FrameFolder.of(folder, clock, false);
    }

    /** A small FITS file with one block of pixels; the number distinguishes the files. */
    private static byte[] fits(int number) {
        String header = String.join(
                "",
                List.of(
                                "SIMPLE  =                    T",
                                "BITPIX  =                   16",
                                "NAXIS   =                    2",
                                "NAXIS1  =                   40",
                                "NAXIS2  =                   36",
                                "END")
                        .stream()
                        .map(card -> String.format("%-80s", card))
                        .toList());
        byte[] file = Arrays.copyOf(String.format("%-2880s", header).getBytes(StandardCharsets.US_ASCII), 2 * 2880);
        file[2880] = (byte) number;
        return file;
    }

    private Path save(String name, byte[] content) throws IOException {
        return Files.write(folder.resolve(name), content);
    }

    /** Polls repeatedly for the given time; returns the names that arrived, or the message. */
    private List<String> pollFor(Duration time) {
        List<String> arrived = new ArrayList<>();
        for (Instant end = clock.instant().plus(time); clock.instant().isBefore(end); ) {
            clock.advance(Duration.ofMillis(200));
            for (Arrival arrival : frames.look()) {
                arrived.add(
                        arrival instanceof Arrival.Whole whole
                                ? whole.file().name()
                                : ((Arrival.PassedOver) arrival).line());
            }
        }
        return arrived;
    }

    private List<String> pollForASecond() {
        return pollFor(Duration.ofSeconds(1));
    }

    @Test
    void newFrame_isDeliveredOnce() throws IOException {
        save("a.fits", fits(1));
        assertThat(pollForASecond()).containsExactly("a.fits");
        assertThat(pollForASecond()).isEmpty();
    }

    @Test
    void returnedFrame_isDeliveredAgain() throws IOException {
        save("a.fits", fits(1));
        clock.advance(Duration.ofSeconds(1));
        frames.look();
        clock.advance(Duration.ofSeconds(1));
        frames.putBack(frames.look());
        assertThat(pollForASecond()).containsExactly("a.fits");
        assertThat(pollForASecond()).isEmpty();
    }

    /** Polls at the interval that the folder asks for. */
    private Duration timeUntilDelivery() {
        for (Instant began = clock.instant(); ; clock.advance(frames.untilNextLook())) {
            if (frames.look().stream().anyMatch(Arrival.Whole.class::isInstance)) {
                return Duration.between(began, clock.instant());
            }
            assertThat(Duration.between(began, clock.instant())).isLessThan(Duration.ofSeconds(5));
        }
    }

    /** Like {@link #fits}, with the given number of pixel blocks, none of them empty. */
    private static byte[] largeFits(int number) {
        byte[] file = Arrays.copyOf(
                new String(fits(0), StandardCharsets.US_ASCII)
                        .replace("NAXIS2  =                   36", "NAXIS2  =                  360")
                        .getBytes(StandardCharsets.US_ASCII),
                11 * 2880);
        Arrays.fill(file, 2880, file.length, (byte) number);
        return file;
    }

    @Test
    void frameWithoutGaps_isTakenAtTheSecondPoll() throws IOException {
        save("a.fits", largeFits(1));
        assertThat(timeUntilDelivery()).isEqualTo(Duration.ofMillis(50));
        assertThat(frames.untilNextLook()).isEqualTo(Duration.ofMillis(200));
    }

    /** Its length was allocated before its pixels were written, so the format shows nothing. */
    @Test
    void frameWithAGap_waitsUntilItStopsChanging() throws IOException {
        byte[] whole = largeFits(1);
        byte[] part = whole.clone();
        Arrays.fill(part, 10_000, 12_880, (byte) 0);
        save("a.fits", part);
        frames.look();
        clock.advance(Duration.ofMillis(100));
        assertThat(frames.look()).isEmpty();
        save("a.fits", whole);
        Files.setLastModifiedTime(folder.resolve("a.fits"), FileTime.from(clock.instant()));
        assertThat(timeUntilDelivery()).isEqualTo(Duration.ofMillis(50));
        assertThat(pollForASecond()).isEmpty();
    }

    @Test
    void partlyBlackFrame_isStillTaken() throws IOException {
        byte[] black = largeFits(1);
        Arrays.fill(black, 10_000, 12_880, (byte) 0);
        save("a.fits", black);
        assertThat(timeUntilDelivery()).isEqualTo(Duration.ofMillis(300));
    }

    /** Half of it may still be the old frame, and that half is complete too. */
    @Test
    void overwrittenFrame_waitsUntilItStopsChanging() throws IOException {
        save("latest.fits", largeFits(1));
        assertThat(timeUntilDelivery()).isEqualTo(Duration.ofMillis(50));
        byte[] half = largeFits(1);
        Arrays.fill(half, 2880, 5 * 2880, (byte) 2);
        save("latest.fits", half);
        Files.setLastModifiedTime(folder.resolve("latest.fits"), FileTime.from(clock.instant()));
        assertThat(pollFor(Duration.ofMillis(200))).isEmpty();
        save("latest.fits", largeFits(2));
        Files.setLastModifiedTime(
                folder.resolve("latest.fits"), FileTime.from(clock.instant().plusMillis(1)));
        assertThat(timeUntilDelivery()).isEqualTo(Duration.ofMillis(300));
    }

    @Test
    void frameRenamedOverAnother_isTakenAtTheSecondPoll() throws IOException {
        save("latest.fits", largeFits(1));
        assertThat(timeUntilDelivery()).isEqualTo(Duration.ofMillis(50));
        Path part = save("latest.part", largeFits(2));
        Files.setLastModifiedTime(part, FileTime.from(clock.instant()));
        Files.move(part, folder.resolve("latest.fits"), StandardCopyOption.REPLACE_EXISTING);
        assertThat(timeUntilDelivery()).isEqualTo(Duration.ofMillis(50));
    }

    @Test
    void growingFrame_isNotTaken() throws IOException {
        byte[] whole = fits(1);
        for (int part = 1; part < 6; part++) {
            save("a.fits", Arrays.copyOf(whole, whole.length * part / 6));
            assertThat(pollForASecond()).isEmpty();
        }
        save("a.fits", whole);
        assertThat(pollForASecond()).containsExactly("a.fits");
    }

    @Test
    void incompleteFrame_isReportedOnce_andTakenIfCompletedLater() throws IOException {
        save("a.fits", Arrays.copyOf(fits(1), 3000));
        assertThat(pollFor(Duration.ofSeconds(30)))
                .containsExactly("a.fits is not complete yet; it is read once it is.");
        save("a.fits", fits(1));
        assertThat(pollForASecond()).containsExactly("a.fits");
    }

    @Test
    void temporaryNames_areIgnoredUntilRenamed() throws IOException {
        Path temporary = save("a.fits.tmp", fits(1));
        save(".hidden.fits", fits(2));
        save("b.fits~", fits(3));
        assertThat(pollForASecond()).isEmpty();
        Files.move(temporary, folder.resolve("a.fits"));
        assertThat(pollForASecond()).containsExactly("a.fits");
    }

    @Test
    void renamedOrCopiedFrame_isNotTakenTwice() throws IOException {
        Path first = save("a.fits", fits(1));
        assertThat(pollForASecond()).containsExactly("a.fits");
        Files.move(first, folder.resolve("renamed.fits"));
        assertThat(pollForASecond()).containsExactly("renamed.fits is the same frame as an earlier file.");
        Files.copy(folder.resolve("renamed.fits"), folder.resolve("copy.fits"));
        assertThat(pollForASecond()).containsExactly("copy.fits is the same frame as an earlier file.");
    }

    @Test
    void otherFrameWithTheSameName_isNew() throws IOException {
        for (int i = 1; i <= 3; i++) {
            Path part = save("latest.part", fits(i));
            Files.move(part, folder.resolve("latest.fits"), StandardCopyOption.REPLACE_EXISTING);
            Files.setLastModifiedTime(folder.resolve("latest.fits"), FileTime.from(clock.instant()));
            assertThat(pollForASecond()).containsExactly("latest.fits");
        }
    }

    @Test
    void simultaneousFrames_areDeliveredInSavingOrder() throws IOException {
        Files.setLastModifiedTime(save("z.fits", fits(1)), FileTime.from(clock.instant()));
        Files.setLastModifiedTime(
                save("a.fits", fits(2)), FileTime.from(clock.instant().plusSeconds(1)));
        assertThat(pollForASecond()).containsExactly("z.fits", "a.fits");
    }

    @Test
    void otherFile_isIgnored_andReportedIfItLooksLikeAFrame() throws IOException {
        save("notes.txt", "clear, cold".getBytes(StandardCharsets.UTF_8));
        save("broken.fits", "no frame".getBytes(StandardCharsets.UTF_8));
        Files.createDirectory(folder.resolve("darks"));
        assertThat(pollForASecond()).containsExactly("broken.fits is not a supported image.");
        assertThat(pollForASecond()).isEmpty();
    }

    @Test
    void existingFrames_areIgnored_unlessRequested() throws IOException {
        save("old.fits", fits(1));
        FrameFolder fresh = FrameFolder.of(folder, clock, false);
        assertThat(fresh.passedOver()).isEqualTo(1);
        frames = fresh;
        assertThat(pollForASecond()).isEmpty();
        frames = FrameFolder.of(folder, clock, true);
        assertThat(frames.passedOver()).isZero();
        assertThat(pollForASecond()).containsExactly("old.fits");
    }

    @Test
    void existingFrame_isNotNewWhenRenamed() throws IOException {
        Path old = save("latest.fits", fits(1));
        Files.setLastModifiedTime(old, FileTime.from(clock.instant().minusSeconds(60)));
        frames = FrameFolder.of(folder, clock, false);
        Files.move(old, folder.resolve("frame-1.fits"));
        save("latest.fits", fits(2));
        assertThat(pollForASecond())
                .containsExactlyInAnyOrder("frame-1.fits is an earlier file, renamed.", "latest.fits");
        Files.move(folder.resolve("frame-1.fits"), folder.resolve("first.fits"));
        assertThat(pollForASecond()).containsExactly("first.fits is an earlier file, renamed.");
    }

    /** Same size and time as an existing frame: a clock of whole seconds cannot distinguish them. */
    @Test
    void newFrameOfTheSameSizeAndTime_isNew() throws IOException {
        Path old = save("a.fits", fits(1));
        frames = FrameFolder.of(folder, clock, false);
        Files.setLastModifiedTime(save("b.fits", fits(2)), Files.getLastModifiedTime(old));
        assertThat(pollForASecond()).containsExactly("b.fits");
    }

    @Test
    void rejectedFile_isReadAgainOnlyAfterAChange() throws IOException {
        Path part = save("a.fits", Arrays.copyOf(fits(1), 3000));
        assertThat(pollFor(Duration.ofSeconds(12))).hasSize(1);
        // Now not a frame, which would be reported if it were read; size and time are unchanged.
        FileTime time = Files.getLastModifiedTime(part);
        save("a.fits", Arrays.copyOf(String.format("%-3000s", "no frame").getBytes(StandardCharsets.US_ASCII), 3000));
        Files.setLastModifiedTime(part, time);
        assertThat(pollFor(Duration.ofSeconds(12))).isEmpty();
        Files.setLastModifiedTime(part, FileTime.from(clock.instant()));
        assertThat(pollForASecond()).containsExactly("a.fits is not a supported image.");
    }

    @Test
    void vanishedFolder_isReportedOnce_andWatchedAgainOnReturn() throws IOException {
        Path moved = folder.resolveSibling(folder.getFileName() + "-away");
        Files.move(folder, moved);
        assertThat(pollFor(Duration.ofSeconds(3))).containsExactly(folder + " cannot be read now; trying again.");
        Files.move(moved, folder);
        save("a.fits", fits(1));
        assertThat(pollForASecond()).containsExactly("a.fits");
    }

    @Test
    void missingFolder_isRefused() throws IOException {
        assertThatThrownBy(() -> FrameFolder.of(folder.resolve("no"), clock, false))
                .isInstanceOf(OperationFailed.class)
                .hasMessage(
                        folder.resolve("no") + " does not exist. Name the folder that your capture program saves to.");
        Path file = save("a.fits", fits(1));
        assertThatThrownBy(() -> FrameFolder.of(file, clock, false))
                .isInstanceOf(OperationFailed.class)
                .hasMessage(file + " is a file. Name the folder that your capture program saves to.");
    }
}
