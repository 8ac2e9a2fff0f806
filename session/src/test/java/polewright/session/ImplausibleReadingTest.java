package polewright.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.alignment.allowance.DiscAllowance;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.Sighting;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Rig;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

/** The distance is computed here from plain differences of angles, independently of the models tested. */
class ImplausibleReadingTest {
    private static final Instant EVENING = Instant.parse("2026-01-15T20:00:00Z");
    private static final Site LARKFELL = Site.ofDegrees(54.60, -2.90, 240);
    private static final Site TUSSOCK_FLAT = Site.ofDegrees(-43.95, 170.40, 710);

    private static Optional<ImplausibleReading> of(Sighting sighting, Site site) {
        return ImplausibleReading.of(sighting, begun(site), AxisPointing.atPole(site));
    }

    private static NightEvent.Begun begun(Site site) {
        return new NightEvent.Begun(
                "a site",
                site,
                Weather.standardAt(site.heightMetres()),
                Rig.typicalForkOnWedge(),
                DiscAllowance.VISUAL);
    }

    private static LevelledScale scale(double degrees) {
        return new LevelledScale(EVENING, Angle.ofDegrees(degrees), LevelledScale.USUAL_SIGMA);
    }

    private static CompassBearing compass(double degrees) {
        return new CompassBearing(EVENING, Angle.ofDegrees(degrees), Angle.ZERO, CompassBearing.USUAL_SIGMA);
    }

    @ParameterizedTest
    @ValueSource(doubles = {-53.5, 5.35, 36.5, 90, 0})
    void scaleFarFromTheLatitude_isQuestioned(double read) {
        ImplausibleReading far = of(scale(read), LARKFELL).orElseThrow();
        assertThat(far.up().degrees()).isCloseTo(read - 54.60, within(1e-3));
        assertThat(far.east().degrees()).isCloseTo(0, within(0.01));
    }

    @ParameterizedTest
    @ValueSource(doubles = {53.5, 54.6, 45, 65, 70})
    void scaleNearTheLatitude_isNotQuestioned(double read) {
        assertThat(of(scale(read), LARKFELL)).isEmpty();
    }

    @Test
    void wrongEndOfTheScale_isNamed() {
        assertThat(of(scale(35.4), LARKFELL).orElseThrow().cause().orElseThrow())
                .contains("zenith");
        assertThat(of(scale(5.35), LARKFELL).orElseThrow().cause()).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"40, true", "120, true", "180, true", "320, true", "355, false", "4, false", "20, false"})
    void compassFarFromNorth_isQuestioned(double bearing, boolean isFar) {
        Optional<ImplausibleReading> far = of(compass(bearing), LARKFELL);
        assertThat(far.isPresent()).isEqualTo(isFar);
        far.ifPresent(found -> assertThat(Math.abs(found.east().degrees()))
                .isCloseTo(Math.min(bearing, 360 - bearing) * Math.cos(Math.toRadians(54.60)), within(1e-3)));
    }

    @Test
    void southernSite_compassBearingIsTowardSouth() {
        assertThat(of(compass(172), TUSSOCK_FLAT)).isEmpty();
        assertThat(of(compass(4), TUSSOCK_FLAT).orElseThrow().cause().orElseThrow())
                .contains("wrong end");
        // Azimuth 150 is east of south.
        assertThat(of(compass(150), TUSSOCK_FLAT).orElseThrow().east().degrees())
                .isPositive();
    }

    @Test
    void axisKnownToBeFarOff_agreeingReadingIsNotQuestioned() {
        AxisPointing leaning = AxisPointing.of(Angle.ZERO, Angle.ofDegrees(34));
        assertThat(ImplausibleReading.of(scale(33), begun(LARKFELL), leaning)).isEmpty();
        assertThat(ImplausibleReading.of(scale(5.35), begun(LARKFELL), leaning)).isPresent();
    }

    @Test
    void readingWithALargeUncertainty_isNotQuestioned() {
        assertThat(of(new CompassBearing(EVENING, Angle.ofDegrees(50), Angle.ZERO, Angle.ofDegrees(30)), LARKFELL))
                .isEmpty();
    }
}
