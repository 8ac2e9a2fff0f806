package polewright.report.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import polewright.operations.CommandRun;

/** Directions to a pole star outside the view, in fists and in field widths. */
class PoleStarWordsTest {
    @TempDir
    private Path folder;

    private static String flat(CommandRun.Outcome outcome) {
        return outcome.out().replaceAll("\\s+", " ");
    }

    private CommandRun evening(String at, String site, String bearing, String scale) {
        CommandRun person = CommandRun.begun(folder, at, site);
        person.good("sight", "scale", scale);
        person.good("sight", "compass", bearing, "--as-typed");
        return person;
    }

    /**
     * The axis points about 10° west of north in azimuth, 6° on the sky, and 2° low: the star is to the right and up.
     */
    @Test
    void inTheNorth_starIsGivenInFistsAndFinderFields() {
        CommandRun person = evening("2026-11-25T20:00:00Z", "54.60,-2.90,240", "350", "51.6");
        String output = flat(person.good("skip", "not-in-view", "--sighting", "still-point", "--star", "polaris"));
        assertThat(output)
                .containsPattern("FIND To bring Polaris into view, face the pole and look along the tube in its home"
                        + " position\\. By the fix Polaris is about half a fist \\([56]°\\) to the right and"
                        + " half a fist \\([34]°\\) up \\(±[345]°\\)\\.")
                .containsPattern("SWEEP Move the tube 1 field to the right and half a field up, then row by row, half a"
                        + " finder field at a time, 1 field each way\\. Count the fields from home to the"
                        + " star: the mount has to move as far\\.")
                .contains("SWING Or move the mount by hand until Polaris is in the finder: by the fix, 1 field to"
                        + " the right and half a field up.")
                .contains(
                        "CARE The next step moves the whole mount. It is heavy: work with a second person.",
                        "keep the tripod from tipping")
                .contains("THEN after moving it: polewright knock, then sight the centre of rotation.");
        assertThat(flat(person.good("next"))).contains("FIND To bring Polaris").doesNotContain("SWEEP");
        assertThat(flat(person.good("advise"))).contains("FIND To bring Polaris", "SWEEP Move the tube");
        person.good("knock");
        assertThat(flat(person.good("next"))).doesNotContain("FIND To bring");
    }

    /** Facing south, east is to the left: an axis that points too far east has the pole star on its right. */
    @Test
    void inTheSouth_rightIsWest() {
        // Magnetic declination at Tussock Flat is 25° east: along an axis to the south the compass reads 155°, and
        // 145° to the left of it.
        CommandRun person = evening("2026-11-25T10:30:00Z", "-43.95,170.40,710", "145", "43.95");
        assertThat(flat(person.good("skip", "not-in-view", "--sighting", "still-point", "--star", "sigma octantis")))
                .containsPattern("is about (half a fist|1 fist) \\([678]°\\) to the right");
    }

    @Test
    void handMove_isGivenInFistsAndFieldsToo() {
        CommandRun person = CommandRun.begun(folder, "2026-11-25T20:00:00Z", "54.60,-2.90,240");
        person.good("sight", "scale", "54.6");
        assertThat(flat(person.good("sight", "compass", "30")))
                .containsPattern(
                        "SWING about \\d+° \\([1-3]½? fists along the horizon, \\d½? fields of the finder\\) to the"
                                + " left, facing the pole\\.");
    }
}
