package polewright.mount.reach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import polewright.mount.rig.ForkClearance;
import polewright.mount.rig.Rig;
import polewright.mount.rig.TravelLimits;
import polewright.sky.angle.Angle;
import polewright.sky.place.Horizon;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.Interval;
import polewright.sky.time.SkyTime;

class PointingLimitsTest {
    private static final Site LARKFELL = Site.ofDegrees(54.6, -2.9, 240);
    private static final Site TUSSOCK_FLAT = Site.ofDegrees(-43.95, 170.4, 710);
    private static final Instant START = Instant.parse("2026-11-25T17:00:00Z");
    private static final Interval NIGHT = new Interval(START, Instant.parse("2026-11-26T07:00:00Z"));
    private static final Horizon WALL_IN_THE_EAST =
            new Horizon(List.of(point(45, 0), point(45, 40), point(135, 40), point(135, 0)));

    private static Horizon.Point point(double azimuthDeg, double altitudeDeg) {
        return new Horizon.Point(Angle.ofDegrees(azimuthDeg), Angle.ofDegrees(altitudeDeg));
    }

    private static Rig rig(double east, double west, double lowest, Optional<ForkClearance> fork) {
        return Rig.typicalForkOnWedge()
                .withTravel(
                        new TravelLimits(Angle.ofDegrees(east), Angle.ofDegrees(west), Angle.ofDegrees(lowest), fork));
    }

    private static HourAnglePlace place(double hourAngleDeg, double declinationDeg) {
        return new HourAnglePlace(Angle.ofDegrees(hourAngleDeg), Angle.ofDegrees(declinationDeg));
    }

    @Test
    void barrierIsNamed() {
        Optional<ForkClearance> camera = Optional.of(new ForkClearance(310, 360, 290, 45, 125));
        PointingLimits reach = PointingLimits.of(LARKFELL, rig(-100, 100, 15, camera), WALL_IN_THE_EAST);
        assertThat(reach.barrier(place(0, -50)).orElseThrow()).isInstanceOf(Barrier.BelowHorizon.class);
        assertThat(reach.barrier(place(-70, 10)).orElseThrow()).isInstanceOf(Barrier.BehindSkyline.class);
        assertThat(reach.barrier(place(0, -25)).orElseThrow()).isInstanceOf(Barrier.TooLow.class);
        assertThat(reach.barrier(place(110, 45)).orElseThrow()).isInstanceOf(Barrier.CablesEnd.class);
        assertThat(reach.barrier(place(30, 70)).orElseThrow()).isInstanceOf(Barrier.StrikesFork.class);
        assertThat(reach.barrier(place(30, 40))).isEmpty();
    }

    /** It is the elevated pole from which the back of the tube is blocked. */
    @Test
    void cameraBehindTheTube_blocksTheSouthPole_inTheSouth() {
        Optional<ForkClearance> camera = Optional.of(new ForkClearance(310, 360, 200, 45, 100));
        PointingLimits reach = PointingLimits.of(TUSSOCK_FLAT, rig(-180, 180, 0, camera), Horizon.OPEN);
        Barrier.StrikesFork strikes =
                (Barrier.StrikesFork) reach.barrier(place(0, -70)).orElseThrow();
        assertThat(strikes.part()).isEqualTo(Barrier.End.BACK);
        assertThat(strikes.farthest().degrees()).isNegative().isGreaterThan(-60);
        assertThat(reach.barrier(place(0, 30))).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void canReach_agreesWithBarrier(long seed) {
        Random random = new Random(seed);
        for (Site site : List.of(LARKFELL, TUSSOCK_FLAT)) {
            PointingLimits reach = PointingLimits.of(
                    site, rig(-95, 120, 12, Optional.of(new ForkClearance(310, 340, 400, 45, 125))), WALL_IN_THE_EAST);
            for (int i = 0; i < 20_000; i++) {
                HourAnglePlace there = place(random.nextDouble(-180, 180), random.nextDouble(-90, 90));
                assertThat(reach.canReach(there))
                        .as("%s", there)
                        .isEqualTo(reach.barrier(there).isEmpty());
            }
        }
    }

    /** The local horizon is measured by eye, through the air: a star is above it once it is seen above it. */
    @Test
    void refractionLiftsAStarAboveTheHorizon() {
        ObservingMoment moment =
                ObservingMoment.of(LARKFELL, SkyTime.of(START), Weather.standardAt(LARKFELL.heightMetres()));
        HourAnglePlace nearHorizon = place(90, 2.62);
        Angle airless = moment.airless(nearHorizon).altitude();
        Angle seen = moment.refracted(moment.airless(nearHorizon)).altitude();
        PointingLimits reach = PointingLimits.of(
                LARKFELL,
                rig(-180, 180, 0, Optional.empty()),
                new Horizon(
                        List.of(new Horizon.Point(Angle.ZERO, airless.plus(seen).times(0.5)))));
        assertThat(reach.altitudeSeen(nearHorizon).arcminutes()).isCloseTo(seen.arcminutes(), within(0.3));
        assertThat(seen.minus(airless).arcminutes()).isPositive();
        assertThat(reach.canReach(nearHorizon)).isTrue();
    }

    @Test
    void windowsAgreeWithCheckingEverySecond() {
        PointingLimits reach = PointingLimits.of(LARKFELL, rig(-100, 100, 15, Optional.empty()), WALL_IN_THE_EAST);
        SkyPath path = SkyPath.fixed(place(-100, 20), START);
        Reachability.Reachable found = (Reachability.Reachable) reach.windows(path, NIGHT);
        for (Interval window : found.windows()) {
            assertThat(reach.canReach(path.at(window.from()))).isTrue();
            assertThat(reach.canReach(path.at(window.to()))).isTrue();
            assertThat(reach.canReach(path.at(window.from().minusSeconds(6)))).isFalse();
            assertThat(reach.canReach(path.at(window.to().plusSeconds(6)))).isFalse();
        }
        assertThat(found.windows()).hasSize(1);
    }

    @Test
    void neverReachable_hasTheBarrierAtItsHighest() {
        PointingLimits reach = PointingLimits.of(LARKFELL, rig(-180, 180, 15, Optional.empty()), Horizon.OPEN);
        Reachability outcome = reach.windows(SkyPath.fixed(place(-60, -28), START), NIGHT);
        assertThat(((Reachability.Never) outcome).barrier()).isInstanceOf(Barrier.TooLow.class);
    }

    @Test
    void circumpolarStar_isReachableAllNight() {
        PointingLimits reach = PointingLimits.of(LARKFELL, Rig.typicalForkOnWedge(), Horizon.OPEN);
        Reachability.Reachable found =
                (Reachability.Reachable) reach.windows(SkyPath.fixed(place(0, 80), START), NIGHT);
        assertThat(found.windows()).containsExactly(NIGHT);
    }
}
