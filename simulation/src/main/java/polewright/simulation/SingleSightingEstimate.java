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
 * Converts one measurement into one offset as handbooks do: the measurement is taken as exact, and earlier ones are
 * ignored.
 *
 * @param weather for the apparent places of stars
 */
record SingleSightingEstimate(Site site, Weather weather, Rig rig) {
    /**
     * 2π / 86164.0905 s: the largest drift of a star for an axis one minute of arc off the pole. As handbooks print
     * it.
     */
    static final double DRIFT_ARCSEC_PER_MINUTE_PER_ARCMIN = 0.26252;

    private static final int PASSES = 8;
    // Eighths of a turn can be counted by hand, sixteenths below one turn.
    private static final int PARTS_OF_A_TURN = 8;
    private static final int PARTS_BELOW_ONE_TURN = 16;

    /** From compass and scale: azimuth from the one, altitude from the other. */
    AxisOffset byReadings(CompassBearing compass, LevelledScale scale) {
        return AxisPointing.of(compass.magneticBearing().plus(compass.declination()), scale.altitude())
                .offset(site);
    }

    /**
     * From where the pole star is seen relative to the centre of rotation, and where it must be about the pole at
     * that time.
     */
    AxisOffset byStillPoint(StillPoint seen) {
        AxisPointing axis = AxisPointing.atPole(site);
        for (int i = 0; i < PASSES; i++) {
            double[] residual = seen.model(site, weather).residual(axis.elevatedEnd());
            // The star should be this far to the right of where it is seen, so the axis must move right by that much.
            Angle right = seen.sigma().times(residual[0] / axis.altitude().cos());
            axis = AxisPointing.of(
                    axis.azimuth().plus(right),
                    axis.altitude().plus(seen.sigma().times(residual[1])));
        }
        return axis.offset(site);
    }

    /**
     * The east offset from the drift of a star near the meridian: 3.81 times the drift in arcseconds over the minutes
     * is the offset in arcminutes. A star some way from the meridian drifts less by the cosine of its hour angle; the
     * contribution of the other direction is neglected, as is refraction.
     */
    Angle eastByDrift(StarDrift drift) {
        return offset(drift, hourAngle(drift).cos());
    }

    /** The up offset from the drift of a star in the east or west: the same with the sine of its hour angle. */
    Angle upByDrift(StarDrift drift) {
        return offset(drift, hourAngle(drift).sin());
    }

    /** From frames: the point of the sky about which they rotate. */
    AxisOffset byFrames(List<CameraAttitude> frames) {
        return AxisFromFrames.of(site, frames).axis().offset(site);
    }

    /** Clockwise turns of the azimuth screw that correct the full offset, at its nominal effect. */
    double azimuthTurns(AxisOffset seen) {
        AxisPointing axis = AxisPointing.of(site, seen);
        Angle move = site.poleAzimuth().minus(axis.azimuth()).wrappedSigned();
        return byHand(rig.azimuthScrew().turnsFor(move, axis.altitude()));
    }

    /** Clockwise turns of the altitude screw that correct the full offset, at its nominal effect. */
    double altitudeTurns(AxisOffset seen) {
        AxisPointing axis = AxisPointing.of(site, seen);
        return byHand(rig.altitudeScrew().turnsFor(site.poleAltitude().minus(axis.altitude()), axis.altitude()));
    }

    private Angle offset(StarDrift drift, double share) {
        Vector3D anywhere = Vector3D.PLUS_K;
        double northArcsec =
                drift.drift().angle().arcseconds() * drift.direction().northShare(anywhere, anywhere);
        double minutes = drift.length().toMillis() / 60000.0;
        // With the northern end east of the pole, a star on the meridian drifts south; in the south the other end is
        // the one set.
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
