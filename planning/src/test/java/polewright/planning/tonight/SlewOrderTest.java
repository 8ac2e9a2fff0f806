package polewright.planning.tonight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import polewright.mount.rig.MountKind;
import polewright.sky.angle.Angle;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.body.SunGuard;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

class SlewOrderTest {
    private static ObservingMoment moment(String at) {
        return ObservingMoment.of(AlignmentStarsTest.LARKFELL, SkyTime.of(Instant.parse(at)), Weather.standardAt(240));
    }

    private static HourAnglePlace place(double hourAngleDeg, double declinationDeg) {
        return new HourAnglePlace(Angle.ofDegrees(hourAngleDeg), Angle.ofDegrees(declinationDeg));
    }

    private static double total(List<SlewOrder.Leg> legs) {
        return legs.stream().mapToDouble(leg -> leg.move().slower().degrees()).sum();
    }

    @Test
    void starsInARow_areVisitedInOrder() {
        List<SlewOrder.Leg> legs = SlewOrder.of(
                        moment("2026-11-25T20:00:00Z"),
                        MountKind.FORK_ON_WEDGE,
                        Optional.of(place(-80, 20)),
                        List.of(place(40, 20), place(-60, 20), place(0, 20)))
                .orElseThrow();
        assertThat(legs).extracting(SlewOrder.Leg::star).containsExactly(1, 2, 0);
        assertThat(total(legs)).isCloseTo(120, within(1e-9));
    }

    /** Through hour angle 12 h the slew would be 20°, but it would wind up the cables. */
    @Test
    void noSlewPassesThroughTheLowerMeridian() {
        List<SlewOrder.Leg> legs = SlewOrder.of(
                        moment("2026-11-25T20:00:00Z"),
                        MountKind.FORK_ON_WEDGE,
                        Optional.of(place(170, 70)),
                        List.of(place(-170, 70)))
                .orElseThrow();
        assertThat(legs.get(0).move().longitude().degrees()).isCloseTo(-340, within(1e-9));
    }

    /** Compared with many random orders: none is shorter. */
    @Test
    void order_isTheShortest() {
        Random random = new Random(5);
        for (int round = 0; round < 20; round++) {
            List<HourAnglePlace> stars = new ArrayList<>();
            for (int i = 0; i < 5; i++) {
                stars.add(place(random.nextDouble(-90, 90), random.nextDouble(-20, 70)));
            }
            ObservingMoment night = moment("2026-11-25T20:00:00Z");
            double best = total(SlewOrder.of(night, MountKind.FORK_ON_WEDGE, Optional.empty(), stars)
                    .orElseThrow());
            for (int trial = 0; trial < 50; trial++) {
                List<HourAnglePlace> shuffled = new ArrayList<>(stars);
                Collections.shuffle(shuffled, random);
                double length = 0;
                HourAnglePlace at = place(0, 90);
                for (HourAnglePlace star : shuffled) {
                    length += Math.max(
                            Math.abs(star.hourAngle().degrees() - at.hourAngle().degrees()),
                            Math.abs(star.declination().degrees()
                                    - at.declination().degrees()));
                    at = star;
                }
                assertThat(best).isLessThanOrEqualTo(length + 1e-9);
            }
        }
    }

    /** Two stars with the Sun between them: one axis first, around it, or not at all; never straight across. */
    @Test
    void byDay_slewGoesAroundTheSun() {
        ObservingMoment noon = moment("2026-06-21T12:00:00Z");
        HourAnglePlace sun = noon.hourAngle(SolarSystem.apparent(SolarSystemBody.SUN, noon));
        HourAnglePlace east = place(sun.hourAngle().degrees() - 50, 20);
        HourAnglePlace north = place(sun.hourAngle().degrees() + 10, 70);

        List<SlewOrder.Leg> legs = SlewOrder.of(noon, MountKind.FORK_ON_WEDGE, Optional.of(east), List.of(north))
                .orElseThrow();
        assertThat(SunGuard.at(noon).isSunUp()).isTrue();
        assertThat(legs.get(0).move().order()).isEqualTo(StarMove.Order.UPPER_AXIS_FIRST);

        HourAnglePlace west = place(sun.hourAngle().degrees() + 50, 20);
        assertThat(SlewOrder.of(noon, MountKind.FORK_ON_WEDGE, Optional.of(east), List.of(west)))
                .as("straight across the Sun")
                .isEmpty();
    }

    @Test
    void uprightFork_startsLevelTowardNorth() {
        ObservingMoment night = moment("2026-11-25T20:00:00Z");
        HourAnglePlace star = place(30, 40);
        StarMove move = SlewOrder.of(night, MountKind.FORK_UPRIGHT, Optional.empty(), List.of(star))
                .orElseThrow()
                .get(0)
                .move();
        assertThat(move.longitude().degrees())
                .isCloseTo(night.airless(star).azimuth().wrappedSigned().degrees(), within(1e-9));
        assertThat(move.latitude().degrees())
                .isCloseTo(night.airless(star).altitude().degrees(), within(1e-9));
    }
}
