package polewright.sky.place;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.jastronomy.jsofa.JSOFA;
import polewright.sky.angle.Angle;
import polewright.sky.time.JulianDate;
import polewright.sky.time.SkyTime;

/**
 * A site, an instant and the weather: everything star-independent, computed once.
 *
 * <p>Places follow the IAU 2006/2000A models through SOFA. Left out: polar motion (up to 0.4″), and UT1−UTC unless the
 * {@link SkyTime} carries it.
 */
public final class ObservingMoment {
    private static final double MAS_TO_RAD = Math.PI / (180 * 3600 * 1000);
    private static final double POLE_GUARD = 1e-12;

    private final Site site;
    private final SkyTime time;
    private final Weather weather;
    private final CelestialPole pole;
    private final JulianDate tt;
    private final JSOFA.Astrom astrom;
    private final Refraction refraction;
    private final Angle siderealTime;

    private ObservingMoment(Site site, SkyTime time, Weather weather, CelestialPole pole) {
        this.site = site;
        this.time = time;
        this.weather = weather;
        this.pole = pole;
        this.tt = time.inTt();
        this.refraction = new Refraction(weather);
        JulianDate ut1 = time.inUt1();
        double earthRotation = JSOFA.jauEra00(ut1.day(), ut1.fraction());
        this.astrom = pole.astrometry(site, tt, earthRotation);
        siderealTime =
                new Angle(earthRotation + site.longitude().radians() - pole.equationOfOriginsRad()).wrappedPositive();
    }

    public static ObservingMoment of(Site site, SkyTime time, Weather weather) {
        return new ObservingMoment(site, time, weather, CelestialPole.at(time.inTt()));
    }

    /** The same instant at another site; the celestial pole is shared. */
    public ObservingMoment at(Site other) {
        return new ObservingMoment(other, time, weather, pole);
    }

    /** Another time at the same site, in the same weather. */
    public ObservingMoment at(SkyTime other) {
        return of(site, other, weather);
    }

    public Site site() {
        return site;
    }

    public SkyTime time() {
        return time;
    }

    public Refraction refraction() {
        return refraction;
    }

    /** Local apparent sidereal time, [0, 24 h). */
    public Angle siderealTime() {
        return siderealTime;
    }

    /** Apparent place of a catalogue star; proper motion, parallax, deflection and aberration applied. */
    public ApparentPlace apparent(CatalogueStar star) {
        double cosDec = Math.max(star.declination().cos(), POLE_GUARD);
        var intermediate = JSOFA.jauAtciq(
                star.rightAscension().radians(),
                star.declination().radians(),
                star.properMotionRaMasPerYear() * MAS_TO_RAD / cosDec,
                star.properMotionDecMasPerYear() * MAS_TO_RAD,
                star.parallaxMas() / 1000,
                star.radialVelocityKmPerSecond(),
                astrom);
        return ApparentPlace.of(
                new Angle(intermediate.alpha - pole.equationOfOriginsRad()), new Angle(intermediate.delta));
    }

    /** The ICRS direction (epoch of this moment) of an apparent place; the inverse of {@link #apparent}. */
    public CatalogueStar catalogueDirection(ApparentPlace place) {
        var icrs = JSOFA.jauAticq(
                place.rightAscension().radians() + pole.equationOfOriginsRad(),
                place.declination().radians(),
                astrom);
        return CatalogueStar.fixed(new Angle(icrs.alpha), new Angle(icrs.delta));
    }

    public HourAnglePlace hourAngle(ApparentPlace place) {
        return new HourAnglePlace(siderealTime.minus(place.rightAscension()), place.declination());
    }

    public ApparentPlace apparent(HourAnglePlace place) {
        return ApparentPlace.of(siderealTime.minus(place.hourAngle()), place.declination());
    }

    public AirlessDirection airless(HourAnglePlace place) {
        return new AirlessDirection(equatorialToEnu(place));
    }

    public AirlessDirection airless(ApparentPlace place) {
        return airless(hourAngle(place));
    }

    public HourAnglePlace hourAngle(AirlessDirection direction) {
        Vector3D v = direction.enu();
        double sinLat = site.latitude().sin();
        double cosLat = site.latitude().cos();
        // x toward the upper culmination of the equator, y east, z toward the north pole.
        double x = -sinLat * v.getY() + cosLat * v.getZ();
        double z = cosLat * v.getY() + sinLat * v.getZ();
        return new HourAnglePlace(
                new Angle(Math.atan2(-v.getX(), x)), new Angle(Math.atan2(z, Math.sqrt(x * x + v.getX() * v.getX()))));
    }

    /** As seen, with the refraction of this moment. */
    public RefractedDirection refracted(AirlessDirection direction) {
        Angle altitude = direction.altitude();
        return RefractedDirection.of(direction.azimuth(), altitude.plus(refraction.lift(altitude)));
    }

    public RefractedDirection refracted(ApparentPlace place) {
        return refracted(airless(place));
    }

    /** Without refraction; the inverse of {@link #refracted(AirlessDirection)}. */
    public AirlessDirection airless(RefractedDirection direction) {
        return AirlessDirection.of(direction.azimuth(), refraction.trueAltitude(direction.altitude()));
    }

    /** Terrestrial Time of this moment. */
    public JulianDate tt() {
        return tt;
    }

    /** Position of the observer from the solar-system barycentre, au, BCRS axes. */
    public Vector3D observerBarycentricAu() {
        return new Vector3D(astrom.eb);
    }

    /**
     * Apparent place of a solar-system body from its true direction. Aberration and the rotation to the equator and
     * equinox of date are applied; light deflection (under 0.01″ away from the Sun) is not.
     *
     * @param towardBody vector from the observer to the body at the time its light left, BCRS axes, any length
     */
    public ApparentPlace apparentOfNearBody(Vector3D towardBody) {
        Vector3D natural = towardBody.normalize();
        double[] proper = JSOFA.jauAb(natural.toArray(), astrom.v, astrom.em, astrom.bm1);
        double[] intermediate = JSOFA.jauRxp(astrom.bpn, proper);
        var place = JSOFA.jauC2s(intermediate);
        return ApparentPlace.of(new Angle(place.alpha - pole.equationOfOriginsRad()), new Angle(place.delta));
    }

    private Vector3D equatorialToEnu(HourAnglePlace place) {
        double sinLat = site.latitude().sin();
        double cosLat = site.latitude().cos();
        double cosDec = place.declination().cos();
        double sinDec = place.declination().sin();
        double cosHa = place.hourAngle().cos();
        return new Vector3D(
                -cosDec * place.hourAngle().sin(),
                cosLat * sinDec - sinLat * cosDec * cosHa,
                sinLat * sinDec + cosLat * cosDec * cosHa);
    }
}
