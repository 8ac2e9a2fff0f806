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
 * A site that does not fit what else is known of where the person is.
 *
 * @param site as it was typed
 * @param hoursOffZone how far east its Sun is of the computer's time zone, standard time, [−12, 12) hours; empty where the
 *     two agree or the zone says nothing
 * @param kilometresFromLast from the last night's site; empty where that is near, or there is none
 * @param meant the site with its figures exchanged or a sign changed, where that would fit
 */
public record DoubtfulSite(
        Site site, Optional<Double> hoursOffZone, Optional<Double> kilometresFromLast, Optional<Site> meant) {
    /** The widest zones, in the west of China, are 2.9 hours off their Sun. */
    public static final double MOST_HOURS_OFF = 3;
    /** Farther than one drives for an evening. */
    public static final double FAR_KILOMETRES = 100;

    // Zones are drawn by countries: most people live within an hour and a half of their Sun, nearly all within two.
    private static final double RARELY_HOURS_OFF = 2;
    private static final double USUALLY_HOURS_OFF = 1;
    // The mean radius of the Earth (IUGG).
    private static final double EARTH_RADIUS_KM = 6371.0;

    /**
     * What is odd about a site that was typed.
     *
     * @param zone of the computer. One that is fixed at UTC says nothing: that is what a machine has whose zone was never
     *     set. Europe/London in winter is no such zone.
     * @param at when it is to hold
     * @param last where the last night was, if there was one
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

    /** Whether anything but the distance from the last night's site is odd; a question about a far place needs no warning. */
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

    /** Latitude and longitude exchanged, east for west, or both. */
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
