package polewright.alignment.sighting;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static polewright.alignment.sighting.SkySetting.EVENING;
import static polewright.alignment.sighting.SkySetting.LARKFELL;
import static polewright.alignment.sighting.SkySetting.TUSSOCK_FLAT;
import static polewright.alignment.sighting.SkySetting.starAt;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;

class StillPointTest {
    /**
     * The pole star's position relative to the pole in each kind of view: calculated outside this project, with (right,
     * up) = (∓d sin HA, ±d cos HA). At HA 30° and 60′ in the north, erect: left 30′, up 52′: 11 o'clock.
     */
    @ParameterizedTest
    @CsvSource({
        "north, ERECT,    11",
        "north, INVERTED, 5",
        "north, MIRRORED, 1",
        "south, ERECT,    1",
        "south, INVERTED, 7",
        "south, MIRRORED, 11",
    })
    void axisAtThePole_hasThePoleStarAsInTheReferenceSheet(String hemisphere, Orientation view, double clock) {
        Site site = hemisphere.equals("north") ? LARKFELL : TUSSOCK_FLAT;
        StillPoint seen = new StillPoint(
                EVENING,
                starAt(site, EVENING, 30, 89 * site.hemisphereSign()),
                ReadLength.ofField(0.25, Angle.ofDegrees(4)),
                new ClockDirection(clock),
                View.of(view),
                Angle.ofArcminutes(1));
        double[] residual = seen.model(site, Weather.AIRLESS)
                .residual(AxisPointing.atPole(site).elevatedEnd());
        assertThat(residual[0]).isCloseTo(0, within(0.02));
        assertThat(residual[1]).isCloseTo(0, within(0.02));
    }

    @ParameterizedTest
    @CsvSource({"ERECT, 3", "INVERTED, 9", "MIRRORED, 9"})
    void starRightOfTheCentreOfRotation_putsTheAxisToItsLeft(Orientation view, double clock) {
        // Facing north, right is east: a star at the pole seen to the right puts the axis west of the pole.
        StillPoint seen = new StillPoint(
                EVENING,
                starAt(LARKFELL, EVENING, 0, 90),
                ReadLength.ofField(0.5, Angle.ofDegrees(2)),
                new ClockDirection(clock),
                View.of(view),
                Angle.ofArcminutes(1));
        AxisPointing west = AxisPointing.of(LARKFELL, AxisOffset.ofArcminutes(-60, 0));
        double[] residual = seen.model(LARKFELL, Weather.AIRLESS).residual(west.elevatedEnd());
        assertThat(residual[0]).isCloseTo(0, within(0.1));
        // A degree west of the pole the vertical itself is inclined by 1° tan φ: 1.5′ over the 60′.
        assertThat(residual[1]).isCloseTo(60 * Math.toRadians(1) * Math.tan(Math.toRadians(54.6)), within(0.1));
    }
}
