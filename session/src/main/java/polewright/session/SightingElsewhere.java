package polewright.session;

import java.util.List;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.TurnedFrames;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.magnetic.MagneticModel;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;
import polewright.sky.time.SkyTime;

/**
 * Transfers a sighting logged for a wrong site to the right one. Most sightings contain only readings. A compass
 * bearing contains the declination of its site, and frames contain the camera's attitude relative to the ground there.
 */
public final class SightingElsewhere {
    // Far enough from the frame centre that refraction rotates the camera as it does across a usual field.
    private static final double BESIDE_CENTRE_RAD = Math.toRadians(1);

    private SightingElsewhere() {}

    /**
     * The sighting for the right site and its air; unchanged if it depends on neither, or if both are the same.
     *
     * @param entered the beginning in force when the sighting was derived
     * @param corrected the corrected beginning
     */
    public static Sighting of(Sighting logged, NightEvent.Begun entered, NightEvent.Begun corrected) {
        if (entered.site().equals(corrected.site()) && entered.weather().equals(corrected.weather())) {
            return logged;
        }
        if (logged instanceof CompassBearing compass) {
            return compass(compass, entered, corrected);
        }
        return logged instanceof TurnedFrames frames ? frames(frames, entered, corrected) : logged;
    }

    /** A typed declination is kept. */
    private static Sighting compass(CompassBearing compass, NightEvent.Begun entered, NightEvent.Begun corrected) {
        Angle modelled =
                MagneticModel.wmm2025().field(entered.site(), compass.at()).declination();
        boolean isByTheModel = Math.abs(compass.declination().minus(modelled).arcseconds()) < 1;
        return isByTheModel
                ? new CompassBearing(
                        compass.at(),
                        compass.magneticBearing(),
                        MagneticModel.wmm2025()
                                .field(corrected.site(), compass.at())
                                .declination(),
                        compass.sigma())
                : compass;
    }

    private static Sighting frames(TurnedFrames frames, NightEvent.Begun entered, NightEvent.Begun corrected) {
        List<CameraAttitude> there = frames.frames().stream()
                .map(frame -> attitude(frame, entered, corrected))
                .toList();
        return new TurnedFrames(
                there, frames.afterScrews().map(frame -> attitude(frame, entered, corrected)), frames.drive());
    }

    /** The stars on the frame are the same, but their directions relative to the ground differ. */
    private static CameraAttitude attitude(CameraAttitude frame, NightEvent.Begun entered, NightEvent.Begun corrected) {
        SkyTime at = SkyTime.of(frame.at());
        ObservingMoment from = ObservingMoment.of(entered.site(), at, entered.weather());
        ObservingMoment to = ObservingMoment.of(corrected.site(), at, corrected.weather());
        Rotation camera = frame.cameraToEnu();
        Vector3D beside = new Vector3D(Math.sin(BESIDE_CENTRE_RAD), 0, Math.cos(BESIDE_CENTRE_RAD));
        Rotation cameraToEnu = new Rotation(
                Vector3D.PLUS_K,
                beside,
                seen(camera.applyTo(Vector3D.PLUS_K), from, to),
                seen(camera.applyTo(beside), from, to));
        return CameraAttitude.of(frame.at(), cameraToEnu, frame.covariance());
    }

    private static Vector3D seen(Vector3D enu, ObservingMoment from, ObservingMoment to) {
        var place = from.apparent(from.hourAngle(from.airless(new RefractedDirection(enu))));
        return to.refracted(place).enu();
    }
}
