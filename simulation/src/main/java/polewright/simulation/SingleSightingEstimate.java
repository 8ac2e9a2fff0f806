package polewright.simulation;

import java.time.Duration;
import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.alignment.camera.AxisFromFrames;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.body.Ephemeris;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * From one measurement to one offset, as handbooks have it: what was seen is taken for what is, whatever was seen before.
 *
 * @param weather for where stars are seen
 */
record SingleSightingEstimate(Site site, Weather weather, Rig rig) {
    /** 2π / 86164.0905 s: one minute of arc off the pole lets a star drift by so much at most. As handbooks print it. */
    static final double DRIFT_ARCSEC_PER_MINUTE_PER_ARCMIN = 0.26252;

    private static final int PASSES = 8;
    // By eighths a hand can count, by sixteenths below one turn.
    private static final int PARTS_OF_A_TURN = 8;
    private static final int PARTS_BELOW_ONE_TURN = 16;

    /** By compass and scale: azimuth from the one, altitude from the other. */
    AxisOffset byReadings(CompassBearing compass, LevelledScale scale) {
        return AxisPointing.of(compass.magneticBearing().plus(compass.declination()), scale.altitude())
                .offset(site);
    }

    /** From where the pole star stands about the still point, and where about the pole it stands by the clock. */
    AxisOffset byStillPoint(StillPoint seen) {
        AxisPointing axis = AxisPointing.atPole(site);
        for (int i = 0; i < PASSES; i++) {
            double[] amiss = seen.model(site, weather).residual(axis.elevatedEnd());
            // The star is expected so far to the right of where it is seen: the axis must stand that much more to the
            // right.
            Angle right = seen.sigma().times(amiss[0] / axis.altitude().cos());
            axis = AxisPointing.of(
                    axis.azimuth().plus(right),
                    axis.altitude().plus(seen.sigma().times(amiss[1])));
        }
        return axis.offset(site);
    }

    /**
     * East by the drift of a star near the meridian: 3.81 times the drift in arcseconds over the minutes is the offset in
     * arcminutes. A star some way from the meridian drifts less by the cosine of its hour angle; the other direction's
     * share in it is left out, as is refraction.
     */
    Angle eastByDrift(StarDrift drift) {
        return offset(drift, hourAngle(drift).cos());
    }

    /** Up by the drift of a star in the east or west: the same with the sine of its hour angle. */
    Angle upByDrift(StarDrift drift) {
        return offset(drift, hourAngle(drift).sin());
    }

    /** By frames: the point of the sky about which they turn. */
    AxisOffset byFrames(List<CameraAttitude> frames) {
        return AxisFromFrames.of(site, frames).axis().offset(site);
    }

    /** Clockwise turns of the azimuth screw that undo all of an offset, by what its owner takes a turn to do. */
    double azimuthTurns(AxisOffset seen) {
        AxisPointing axis = AxisPointing.of(site, seen);
        Angle move = site.poleAzimuth().minus(axis.azimuth()).wrappedSigned();
        return byHand(rig.azimuthScrew().turnsFor(move, axis.altitude()));
    }

    /** The same of the altitude screw. */
    double altitudeTurns(AxisOffset seen) {
        AxisPointing axis = AxisPointing.of(site, seen);
        return byHand(rig.altitudeScrew().turnsFor(site.poleAltitude().minus(axis.altitude()), axis.altitude()));
    }

    private Angle offset(StarDrift drift, double share) {
        Vector3D anywhere = Vector3D.PLUS_K;
        double northArcsec =
                drift.drift().angle().arcseconds() * drift.direction().northShare(anywhere, anywhere);
        double minutes = drift.length().toMillis() / 60000.0;
        // A northern end east of the pole lets a star on the meridian drift south; in the south the other end is set.
        return Angle.ofArcminutes(
                -site.hemisphereSign() * northArcsec / (DRIFT_ARCSEC_PER_MINUTE_PER_ARCMIN * minutes * share));
    }

    private Angle hourAngle(StarDrift drift) {
        Duration half = drift.length().dividedBy(2);
        ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(drift.at().plus(half)), weather);
        return moment.hourAngle(Ephemeris.apparent(drift.star(), moment)).hourAngle();
    }

    private static double byHand(double turns) {
        double parts = Math.abs(turns) < 1 ? PARTS_BELOW_ONE_TURN : PARTS_OF_A_TURN;
        return Math.rint(turns * parts) / parts;
    }
}
