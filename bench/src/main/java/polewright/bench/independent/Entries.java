package polewright.bench.independent;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import polewright.alignment.advice.ScrewTurn;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.ReticleNorth;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.bench.independent.truth.Star;
import polewright.bench.independent.truth.StarInField;
import polewright.bench.independent.truth.Turns;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.Optic;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;

/** Readings as the person enters them. The uncertainties are those given in the documentation for each kind. */
final class Entries {
    private static final Angle DIVISION = Angle.ofArcseconds(15);
    static final double DIVISION_RAD = Math.toRadians(15 / 3600.0);
    private static final Angle COMPASS_SIGMA = Angle.ofDegrees(3);
    private static final Angle SCALE_SIGMA = Angle.ofDegrees(1);
    private static final double FIELD_SIGMA = 0.05;
    private static final double DRIFT_SIGMA_DIVISIONS = 0.25;
    private static final double FULL_CIRCLE_DEG = 360;

    private Entries() {}

    static NightEvent compass(Told by, Instant at, double bearingDeg) {
        return new NightEvent.SightingTaken(new CompassBearing(
                by.clock(at),
                Angle.ofDegrees(bearingDeg % FULL_CIRCLE_DEG),
                Angle.ofDegrees(by.declinationDeg(at)),
                COMPASS_SIGMA));
    }

    static NightEvent scale(Told by, Instant at, double altitudeDeg) {
        return new NightEvent.SightingTaken(new LevelledScale(by.clock(at), Angle.ofDegrees(altitudeDeg), SCALE_SIGMA));
    }

    static NightEvent stillPoint(Told by, Instant at, Star star, StarInField seen) {
        Optic finder = by.rig().widestOptic().orElseThrow();
        return new NightEvent.SightingTaken(new StillPoint(
                by.clock(at),
                Catalogue.written(star),
                ReadLength.ofField(seen.fieldWidths(), finder.field()),
                new ClockDirection(seen.clock()),
                finder.view(),
                finder.field().times(FIELD_SIGMA)));
    }

    /**
     * A drift.
     *
     * @param began when the watch began
     * @param north divisions, north positive
     * @param stated how the reticle was set, if that is stated
     */
    static NightEvent drift(Told by, Instant began, Duration watch, Star star, double north, ReticleNorth stated) {
        return new NightEvent.SightingTaken(new StarDrift(
                by.clock(began),
                watch,
                Catalogue.written(star),
                ReadLength.ofDivisions(Math.abs(north), DIVISION),
                new DriftDirection.OnSky(north >= 0, stated),
                DIVISION.times(DRIFT_SIGMA_DIVISIONS)));
    }

    static NightEvent turned(Turns turns) {
        return new NightEvent.ScrewsTurned(
                turns.azimuth(), turns.altitude(), turns.azimuthBack(), turns.altitudeBack());
    }

    /** The turns of an order. */
    static Turns ordered(List<ScrewTurn> order) {
        Turns all = Turns.NONE;
        for (ScrewTurn one : order) {
            all = one.screw() == ScrewTurn.Which.AZIMUTH
                    ? new Turns(one.clockwiseTurns(), one.backTurns(), all.altitude(), all.altitudeBack())
                    : new Turns(all.azimuth(), all.azimuthBack(), one.clockwiseTurns(), one.backTurns());
        }
        return all;
    }
}
