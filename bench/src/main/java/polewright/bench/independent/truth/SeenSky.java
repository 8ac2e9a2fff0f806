package polewright.bench.independent.truth;

import java.time.Instant;
import org.jastronomy.jsofa.JSOFA;
import org.jastronomy.jsofa.JSOFAException;

/**
 * Where stars are seen from a place at an instant, refraction included: the SOFA routines {@code iauApco13}, {@code
 * iauAtciq} and {@code iauAtioq}, called in sequence as in SOFA's own cookbook. UT1 is set equal to UTC.
 */
public final class SeenSky {
    private static final double UNIX_EPOCH_JD = 2440587.5;
    private static final double SECONDS_PER_DAY = 86400;
    private static final double HUMIDITY = 0.5;
    private static final double WAVELENGTH_UM = 0.55;
    private static final double MAS_TO_RAD = Math.toRadians(1 / 3.6e6);

    private final Place place;
    private final Instant at;
    private final JSOFA.Astrom context = new JSOFA.Astrom();

    private SeenSky(Place place, Instant at) {
        this.place = place;
        this.at = at;
    }

    public static SeenSky of(Place place, Instant at, Air air) {
        SeenSky sky = new SeenSky(place, at);
        long days = Math.floorDiv(at.getEpochSecond(), 86400L);
        double dayShare = (Math.floorMod(at.getEpochSecond(), 86400L) + at.getNano() / 1e9) / SECONDS_PER_DAY;
        try {
            JSOFA.jauApco13(
                    UNIX_EPOCH_JD + days,
                    dayShare,
                    0,
                    place.longitude(),
                    place.latitude(),
                    place.heightMetres(),
                    0,
                    0,
                    air.pressureHpa(),
                    air.temperatureC(),
                    air.pressureHpa() == 0 ? 0 : HUMIDITY,
                    WAVELENGTH_UM,
                    sky.context);
        } catch (JSOFAException e) {
            throw new IllegalStateException("SOFA has no sky for " + at, e);
        }
        return sky;
    }

    public Place place() {
        return place;
    }

    public Instant at() {
        return at;
    }

    /** East, north, up. */
    public double[] direction(Star star) {
        // SOFA requires the coordinate rate, without the factor cos δ.
        JSOFA.SphericalCoordinate intermediate = JSOFA.jauAtciq(
                star.rightAscension(),
                star.declination(),
                star.motionRaMasPerYear() * MAS_TO_RAD / Math.cos(star.declination()),
                star.motionDecMasPerYear() * MAS_TO_RAD,
                star.parallaxMas() / 1000,
                star.velocityKmPerSecond(),
                context);
        return seen(intermediate);
    }

    /** Altitude of the Sun, to a minute of arc, from the reversed heliocentric direction of the Earth. */
    public double sunAltitude() {
        double[][] heliocentric = new double[2][3];
        double[][] barycentric = new double[2][3];
        double daysTt = (at.getEpochSecond() + 69) / SECONDS_PER_DAY;
        JSOFA.jauEpv00(UNIX_EPOCH_JD, daysTt, heliocentric, barycentric);
        double[] earth = heliocentric[0];
        JSOFA.SphericalCoordinate intermediate = JSOFA.jauAtciqz(
                Math.atan2(-earth[1], -earth[0]), Math.atan2(-earth[2], Math.hypot(earth[0], earth[1])), context);
        return Directions.altitude(seen(intermediate));
    }

    private double[] seen(JSOFA.SphericalCoordinate intermediate) {
        JSOFA.ObservedPosition observed = JSOFA.jauAtioq(intermediate.alpha, intermediate.delta, context);
        return Directions.of(observed.aob, Math.PI / 2 - observed.zob);
    }

    /** Hour angle of an apparent direction, west positive, about the true pole; [−π, π]. */
    public double hourAngle(double[] seen) {
        double sin = Math.sin(place.latitude());
        double cos = Math.cos(place.latitude());
        return Math.atan2(-seen[0], seen[2] * cos - seen[1] * sin);
    }

    /** Declination of an apparent direction. */
    public double declination(double[] seen) {
        return Math.asin(seen[1] * Math.cos(place.latitude()) + seen[2] * Math.sin(place.latitude()));
    }
}
