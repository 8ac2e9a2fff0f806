package polewright.alignment.sighting;

import java.time.Instant;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.magnetic.MagneticModel;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * A site that was entered wrongly, and the correct one, each with its weather. Most sightings contain only readings. A compass
 * bearing contains the declination of its site, and frames contain the camera's attitude relative to the ground there.
 */
public record SiteCorrection(Site entered, Weather enteredWeather, Site corrected, Weather correctedWeather) {
    // Far enough from the frame centre that refraction rotates the camera as it does across a usual field.
    private static final double BESIDE_CENTRE_RAD = Math.toRadians(1);
    private static final double SAME_ARCSEC = 1;

    /** Whether both are the same, so that nothing changes. */
    boolean isNone() {
        return entered.equals(corrected) && enteredWeather.equals(correctedWeather);
    }

    /** A declination by the model at the right site; a typed one is kept. */
    Angle declination(Angle declination, Instant at) {
        Angle modelled = modelled(entered, at);
        boolean isByTheModel = Math.abs(declination.minus(modelled).arcseconds()) < SAME_ARCSEC;
        return isByTheModel ? modelled(corrected, at) : declination;
    }

    private static Angle modelled(Site site, Instant at) {
        return MagneticModel.wmm2025().field(site, at).declination();
    }

    /** The stars on the frame are the same, but their directions relative to the ground differ. */
    CameraAttitude attitude(CameraAttitude frame) {
        SkyTime at = SkyTime.of(frame.at());
        ObservingMoment from = ObservingMoment.of(entered, at, enteredWeather);
        ObservingMoment to = ObservingMoment.of(corrected, at, correctedWeather);
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
