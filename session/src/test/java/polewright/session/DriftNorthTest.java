package polewright.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.alignment.fix.Agreement;
import polewright.alignment.fix.Fix;
import polewright.mount.AxisOffset;
import polewright.session.event.LoggedEvent;
import polewright.session.jsonl.JsonLines;
import polewright.sky.fields.BodyNames;

/**
 * Nights from an independent simulator (exact spherical geometry, refraction by SOFA's models) whose drifts were
 * measured along celestial north or along the mount's declination, without stating which: authorities/nights. The axis
 * is 4° (or 1.5°) east and 1° low.
 */
class DriftNorthTest {
    // Two degrees of freedom: 95 %.
    private static final double INSIDE = 5.991;

    @ParameterizedTest
    @CsvSource({"north_sky, 240, -60", "north_mount, 240, -60", "north_sky_1p5deg, 90, -60"})
    void correctDriftsFarFromThePole_areAllUsed_andTheAxisIsInsideItsRegion(String night, double east, double up)
            throws IOException {
        Fix fix = NightState.of(events(night)).fix();
        assertThat(fix).isInstanceOf(Fix.Solved.class);
        assertThat(fix.agreements()).noneMatch(Agreement::contradictory);
        AxisOffset wrong = fix.state().offset().minus(AxisOffset.ofArcminutes(east, up));
        assertThat(fix.state().offsetCovariance().normalisedSquare(wrong)).isLessThan(INSIDE);
        assertThat(wrong.distance().arcminutes()).isLessThan(2);
    }

    private static List<LoggedEvent> events(String night) throws IOException {
        try (InputStream in = Objects.requireNonNull(
                DriftNorthTest.class.getResourceAsStream("/authorities/nights/" + night + ".jsonl"))) {
            return JsonLines.readNights(new InputStreamReader(in, StandardCharsets.UTF_8), BodyNames.NONE)
                    .get(0);
        }
    }
}
