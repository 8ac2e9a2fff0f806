package polewright.session;

import java.time.Instant;
import java.time.ZoneId;
import java.time.zone.ZoneRules;
import java.util.Optional;
import java.util.stream.Stream;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * A site that is inconsistent with what else is known about the person's location.
 *
 * @param site as typed
 * @param hoursOffZone difference of local solar time from the computer's standard time, east positive, [−12, 12) hours;
 *     empty if the two agree or the time zone is uninformative
 * @param kilometresFromLast distance from the last night's site; empty if that is near, or if there is none
 * @param meant the site with latitude and longitude swapped or a sign changed, if that would be consistent
 */
public record DoubtfulSite(
        Site site, Optional<Double> hoursOffZone, Optional<Double> kilometresFromLast, Optional<Site> meant) {
    /** The widest time zones, in the west of China, are 2.9 hours off solar time. */
    public static final double MOST_HOURS_OFF = 3;
    /** Farther than one drives for an evening. */
    public static final double FAR_KILOMETRES = 100;

    // Time zones follow borders: most people live within an hour and a half of solar time, nearly all within two.
    private static final double RARELY_HOURS_OFF = 2;
    private static final double USUALLY_HOURS_OFF = 1;
    // The mean radius of the Earth (IUGG).
    private static final double EARTH_RADIUS_KM = 6371.0;

    /**
     * What is odd about a typed site.
     *
     * @param zone of the computer. A zone fixed at UTC is uninformative, because that is the default of a machine whose
     *     time zone was never set. Europe/London in winter is not such a zone.
     * @param at the date for which it is used
     * @param last the last night's site, if there was one
     */
    public static Optional<DoubtfulSite> of(Site site, ZoneId zone, Instant at, Optional<Site> last) {
        Optional<Double> hours = hoursOff(site, zone, at);
        Optional<Double> kilometres = last.map(other -> kilometres(site, other)).filter(far -> far > FAR_KILOMETRES);
        boolean isOffZone = hours.filter(off -> Math.abs(off) > MOST_HOURS_OFF).isPresent();
        Optional<Site> meant = alternatives(site)
                .filter(other -> isNear(other, last) ? kilometres.isPresent() : fitsBetter(other, hours, zone, at))
                .findFirst();
        if (!isOffZone && kilometres.isEmpty() && meant.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                new DoubtfulSite(site, hours.filter(off -> isOffZone || meant.isPresent()), kilometres, meant));
    }

    /**
     * Whether anything other than the distance from the last night's site is odd; a question about a distant place
     * needs no warning.
     */
    public boolean isOddAnywhere() {
        return hoursOffZone.isPresent() || meant.isPresent();
    }

    private static boolean isNear(Site site, Optional<Site> last) {
        return last.filter(other -> kilometres(site, other) <= FAR_KILOMETRES).isPresent();
    }

    private static boolean fitsBetter(Site other, Optional<Double> hours, ZoneId zone, Instant at) {
        return hours.filter(off -> Math.abs(off) > RARELY_HOURS_OFF).isPresent()
                && hoursOff(other, zone, at)
                        .filter(off -> Math.abs(off) < USUALLY_HOURS_OFF)
                        .isPresent();
    }

    /** Latitude and longitude swapped, east for west, or both. */
    private static Stream<Site> alternatives(Site site) {
        double latitude = site.latitude().degrees();
        double longitude = site.longitude().degrees();
        return Stream.of(new double[] {longitude, latitude}, new double[] {latitude, -longitude}, new double[] {
                    longitude, -latitude
                })
                .flatMap(place -> made(place[0], place[1], site.heightMetres()).stream());
    }

    private static Optional<Site> made(double latitudeDeg, double longitudeDeg, double heightMetres) {
        try {
            return Optional.of(Site.ofDegrees(latitudeDeg, longitudeDeg, heightMetres));
        } catch (InputRefused nowhere) {
            return Optional.empty();
        }
    }

    private static Optional<Double> hoursOff(Site site, ZoneId zone, Instant at) {
        ZoneRules rules = zone.getRules();
        int seconds = rules.getStandardOffset(at).getTotalSeconds();
        if (rules.isFixedOffset() && seconds == 0) {
            return Optional.empty();
        }
        Angle off = site.longitude().minus(Angle.ofDegrees(seconds / 240.0)).wrappedSigned();
        return Optional.of(off.hours());
    }

    private static double kilometres(Site one, Site other) {
        return EARTH_RADIUS_KM * Vector3D.angle(fromCentre(one), fromCentre(other));
    }

    private static Vector3D fromCentre(Site site) {
        return new Vector3D(site.longitude().radians(), site.latitude().radians());
    }
}
