package polewright.alignment.sighting;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.fields.FieldReader;
import polewright.sky.fields.FieldWriter;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** Apparent direction of a sighting's body, and the checks common to all sightings. */
final class Sighted {
    // Finer than any eye or camera on a wedge; a smaller value is more likely a typing error.
    static final Angle LEAST_SIGMA = Angle.ofArcseconds(0.05);

    private Sighted() {}

    static ObservingMoment moment(Instant at, Site site, Weather weather) {
        return ObservingMoment.of(site, SkyTime.of(at), weather);
    }

    /** The apparent direction; refuses a body that was below the horizon. */
    static RefractedDirection direction(SkyBody body, ObservingMoment moment) {
        RefractedDirection seen = moment.refracted(Ephemeris.apparent(body, moment));
        if (seen.altitude().radians() < 0) {
            throw new InputRefused(
                    String.format(
                            Locale.ROOT,
                            "%s was %.0f degrees below the horizon at %s",
                            body.label(),
                            Math.ceil(-seen.altitude().degrees()),
                            moment.time().utc().truncatedTo(ChronoUnit.SECONDS)),
                    "check the name, the time (UTC) and the site");
        }
        return seen;
    }

    /** Refuses the Sun: no sighting may require looking at it through a telescope. */
    static void refuseSun(SkyBody body) {
        if (body == SolarSystemBody.SUN) {
            throw new InputRefused("never point the tube at the Sun", "use a star, or a shadow for the azimuth");
        }
    }

    static void requireSigma(Angle sigma, Angle largest) {
        if (!(sigma.compareTo(LEAST_SIGMA) >= 0 && sigma.compareTo(largest) <= 0)) {
            throw new InputRefused(
                    "an uncertainty of " + PlainNumber.asTyped(sigma.degrees())
                            + " degrees is outside 0.05 arcseconds to " + PlainNumber.of(largest.degrees())
                            + " degrees",
                    "give the uncertainty of the reading, 1 sigma");
        }
    }

    /** Azimuth of an ENU vector, from north through east, radians. */
    static double azimuthRad(Vector3D enu) {
        return Math.atan2(enu.getX(), enu.getY());
    }

    static double altitudeRad(Vector3D enu) {
        return Math.atan2(enu.getZ(), Math.hypot(enu.getX(), enu.getY()));
    }

    /** The difference of two angles in [−π, π). */
    static double wrapped(double radians) {
        return new Angle(radians).wrappedSigned().radians();
    }

    static void writeAt(FieldWriter out, Instant at) {
        out.text("seen_at", at.toString());
    }

    /** The time of a sighting that was not necessarily entered at once. */
    static Instant readAt(FieldReader in, Instant entered) {
        return in.has("seen_at") ? in.instant("seen_at") : entered;
    }
}
