package polewright.frames;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** What is asked of the person when a file leaves something out. */
class FactNeededTest {
    private static FrameFacts facts(Optional<LocalDateTime> local, double focalMm, double microns, String... remarks) {
        return new FrameFacts(
                Optional.empty(),
                local,
                Optional.empty(),
                focalMm > 0 ? OptionalDouble.of(focalMm) : OptionalDouble.empty(),
                microns > 0 ? OptionalDouble.of(microns) : OptionalDouble.empty(),
                Optional.empty(),
                List.of(remarks));
    }

    @Test
    void aTimeThatIsThereIsGiven() {
        Instant time = Instant.parse("2026-11-25T20:00:00Z");
        assertThat(FactNeeded.middle("dusk.fits", FrameFacts.NONE.takenAt(time)))
                .isEqualTo(time);
    }

    @Test
    void aMissingTimeIsAskedFor() {
        assertThatThrownBy(() -> FactNeeded.middle("dusk.png", FrameFacts.NONE))
                .isInstanceOf(InputRefused.class)
                .hasMessage("dusk.png does not say when it was taken:"
                        + " give the middle of its exposure with --at, such as --at 2026-11-25T20:00Z.");
    }

    @Test
    void aTimeThatCouldNotBeUsedIsSaidWithTheReason() {
        FrameFacts facts = facts(Optional.empty(), 0, 0, "its DATE-OBS 'last night' is not a date with a time of day");
        assertThatThrownBy(() -> FactNeeded.middle("dusk.fits", facts))
                .hasMessage("dusk.fits does not say when it was taken"
                        + " (its DATE-OBS 'last night' is not a date with a time of day):"
                        + " give the middle of its exposure with --at, such as --at 2026-11-25T20:00Z.");
    }

    @Test
    void aMissingZoneIsAskedFor() {
        FrameFacts facts = facts(Optional.of(LocalDateTime.parse("2026-11-25T21:00:15")), 0, 0);
        assertThatThrownBy(() -> FactNeeded.middle("dusk.jpg", facts))
                .isInstanceOf(InputRefused.class)
                .hasMessage("dusk.jpg tells the time by the camera's clock (2026-11-25 21:00:15) but not its zone:"
                        + " give the zone with --zone, such as --zone +01:00 or --zone Z for UTC.");
    }

    @Test
    void aScaleThatFollowsIsGiven() {
        assertThat(FactNeeded.scalePerPixel("dusk.fits", facts(Optional.empty(), 530, 3.76)))
                .isEqualTo(new Angle(3.76 / 1000 / 530));
    }

    @Test
    void whatIsMissingOfTheScaleIsAskedFor() {
        assertThatThrownBy(() -> FactNeeded.scalePerPixel("dusk.fits", FrameFacts.NONE))
                .hasMessage("dusk.fits does not say its scale: give --scale in arcseconds per pixel,"
                        + " or --focal-length in millimetres and --pixel-size in micrometres.");
        assertThatThrownBy(() -> FactNeeded.scalePerPixel("dusk.fits", facts(Optional.empty(), 530, 0)))
                .hasMessage("dusk.fits says the focal length (530 mm) but not the size of a pixel:"
                        + " give --pixel-size in micrometres, or --scale in arcseconds per pixel.");
        assertThatThrownBy(() -> FactNeeded.scalePerPixel("dusk.fits", facts(Optional.empty(), 0, 3.76)))
                .hasMessage("dusk.fits says the size of a pixel (3.76 micrometres) but not the focal length:"
                        + " give --focal-length in millimetres, or --scale in arcseconds per pixel.");
    }
}
