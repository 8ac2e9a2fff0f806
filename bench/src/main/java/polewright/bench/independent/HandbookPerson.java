package polewright.bench.independent;

import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;
import polewright.bench.independent.truth.Directions;
import polewright.bench.independent.truth.Observer;
import polewright.bench.independent.truth.ReticleLine;
import polewright.bench.independent.truth.SeenSky;
import polewright.bench.independent.truth.Star;
import polewright.bench.independent.truth.StarInField;
import polewright.bench.independent.truth.Turns;
import polewright.bench.independent.truth.ViewShown;
import polewright.bench.independent.truth.Wedge;

/**
 * A careful hobbyist with a handbook and without advice, on the same wedge (common practice): compass and scale; the
 * pole star in the finder, twice if it was far off; a star near the meridian for azimuth and one low in the east or
 * west for altitude, each until its drift is within the tolerance; then the clamps, and both drifts again.
 *
 * <p>In this routine's favour: a drift that is clear after three minutes is corrected at once; hour angles are taken
 * into account; and a screw that made things worse by half is turned the other way from then on.
 */
final class HandbookPerson {
    private static final int MOST_MEASUREMENTS = 120;
    private static final double DRIFT_ARCSEC_PER_MINUTE_PER_ARCMIN = 0.26252;
    private static final double ARCSEC_SIGMA = 3.75;
    private static final Duration FIRST_LOOK = Duration.ofMinutes(3);
    private static final double CLEAR_SIGMAS = 6;
    private static final double LIMIT_IS_CLEAR_SIGMAS = 2;
    private static final double SHORTEST_WATCH_MINUTES = 5;
    private static final double LONGEST_WATCH_MINUTES = 30;
    private static final double WORSE_BY = 1.5;
    private static final double AZIMUTH_ARCMIN_PER_TURN = Math.toDegrees(Math.atan(1.25 / 200)) * 60;
    private static final double ALTITUDE_ARCMIN_PER_TURN = Math.toDegrees(Math.atan(1.25 / 180)) * 60;
    private static final double FINDER_RAD = Math.toRadians(6);
    private static final double FAR_IN_THE_FIELD = 0.25;
    private static final double BRIGHT = 3.5;
    private static final double LOWEST_DEG = 22;
    private static final double HIGHEST_DEG = 78;

    private final Scene scene;
    private final Observer observer;
    private final double tolerated;
    private Wedge wedge;
    private Instant now;
    private boolean clamped;
    private int measurements;
    private int azimuthSense = 1;
    private int altitudeSense = 1;
    // The error that the last turn of each screw was to correct, arcminutes on the sky; 0 when nothing has been turned
    // since it was judged.
    private double eastTurnedBy;
    private double upTurnedBy;

    /**
     * How a night ended.
     *
     * @param minutes until it did
     * @param stopped whether by the handbook's rule
     * @param good whether the axis was truly within the tolerance
     */
    record Ended(double minutes, boolean stopped, boolean good) {}

    private HandbookPerson(Scene scene, Wedge wedge, double toleratedArcmin) {
        this.scene = scene;
        this.observer = new Observer(scene.air(), 1, scene.random());
        this.wedge = wedge;
        this.now = scene.from();
        // For each direction alone, so that both together are within it.
        this.tolerated = toleratedArcmin * Math.sqrt(0.5);
    }

    static Ended play(Scene scene, Wedge wedge, double toleratedArcmin) {
        HandbookPerson person = new HandbookPerson(scene, wedge, toleratedArcmin);
        boolean stopped = person.played();
        return new Ended(
                Duration.between(scene.from(), person.now).toMillis() / 60000.0,
                stopped,
                person.wedge.offset().arcmin() <= toleratedArcmin);
    }

    private boolean played() {
        readCompassAndScale();
        centrePoleStar();
        boolean eastIsGood = false;
        boolean upIsGood = false;
        while (measurements < MOST_MEASUREMENTS) {
            if (!eastIsGood) {
                double east = eastByDrift();
                eastIsGood = Math.abs(east) <= tolerated || !turn(Optional.of(east), Optional.empty());
            } else if (!upIsGood) {
                double up = upByDrift();
                upIsGood = Math.abs(up) <= tolerated || !turn(Optional.empty(), Optional.of(up));
            } else if (clamped) {
                return true;
            } else {
                wedge = wedge.clamped(scene.random());
                now = now.plus(ActionMinutes.CLAMPING);
                clamped = true;
                eastIsGood = false;
                upIsGood = false;
            }
        }
        return false;
    }

    private void readCompassAndScale() {
        double declinationDeg = 0;
        double azimuthDeg = observer.compassDeg(wedge, declinationDeg);
        double altitudeDeg = observer.scaleDeg(wedge);
        now = now.plus(ActionMinutes.READING).plus(ActionMinutes.READING);
        double latitudeDeg = Math.toDegrees(scene.place().latitude());
        double off = azimuthDeg - (latitudeDeg < 0 ? 180 : 0);
        double wrapped = off - 360 * Math.rint(off / 360);
        turn(
                Optional.of(scene.place().sign()
                        * wrapped
                        * 60
                        * Math.cos(scene.place().latitude())),
                Optional.of((altitudeDeg - Math.abs(latitudeDeg)) * 60));
    }

    private void centrePoleStar() {
        double seenAt = FINDER_RAD;
        for (int i = 0; i < 2 && seenAt > FAR_IN_THE_FIELD * FINDER_RAD; i++) {
            now = now.plus(ActionMinutes.STILL_POINT);
            Star star = Catalogue.poleStar(scene.place());
            if (observer.fromStillPoint(wedge, star, now) > FINDER_RAD / 2) {
                return;
            }
            StarInField seen = observer.stillPoint(wedge, star, now, FINDER_RAD, ViewShown.ERECT);
            double clock = Math.toRadians(30 * seen.clock());
            double seenRight = seen.fieldWidths() * FINDER_RAD * Math.sin(clock);
            double seenUp = seen.fieldWidths() * FINDER_RAD * Math.cos(clock);
            double[] there = sky().direction(star);
            double[] pole = scene.place().pole();
            double poleRight = (Directions.azimuth(there) - Directions.azimuth(pole));
            double expectedRight = Math.sin(poleRight) * Math.cos(Directions.altitude(there));
            double expectedUp = Directions.altitude(there) - Directions.altitude(pole);
            double east = scene.place().sign() * arcmin(expectedRight - seenRight);
            double up = arcmin(expectedUp - seenUp);
            turn(Optional.of(east), Optional.of(up));
            seenAt = Math.hypot(east, up) / arcmin(1);
        }
    }

    private static double arcmin(double radians) {
        return Math.toDegrees(radians) * 60;
    }

    private SeenSky sky() {
        return SeenSky.of(scene.place(), now, scene.air());
    }

    /** Arcminutes: 3.81 times the drift in arcseconds a minute, over the cosine of the hour angle. */
    private double eastByDrift() {
        return byDrift(0, 35, 25);
    }

    /** The same by a star six hours from the meridian, over the sine of the hour angle. */
    private double upByDrift() {
        return byDrift(90, 60, 35);
    }

    private double byDrift(double hourAngleDeg, double highestDeclinationDeg, double withinDeg) {
        now = now.plus(ActionMinutes.SETTING_A_STAR);
        measurements++;
        SeenSky sky = sky();
        Star star = Catalogue.stars().stream()
                .filter(one -> one.magnitude() <= BRIGHT)
                .filter(one -> suits(sky, one, highestDeclinationDeg))
                .filter(one -> errorDeg(sky, one, hourAngleDeg) < withinDeg)
                .min(Comparator.comparingDouble(one -> one.magnitude() + errorDeg(sky, one, hourAngleDeg) / 10))
                .orElseGet(() -> nearest(sky, hourAngleDeg));
        double[] seen = sky.direction(star);
        double limitMinutes = LIMIT_IS_CLEAR_SIGMAS * ARCSEC_SIGMA / (DRIFT_ARCSEC_PER_MINUTE_PER_ARCMIN * tolerated);
        Duration usual = Duration.ofMinutes(5
                * (long)
                        Math.ceil(Math.min(LONGEST_WATCH_MINUTES, Math.max(SHORTEST_WATCH_MINUTES, limitMinutes)) / 5));
        Duration watch = FIRST_LOOK;
        double arcsec = watched(star, watch);
        if (Math.abs(arcsec) <= CLEAR_SIGMAS * ARCSEC_SIGMA) {
            watch = usual;
            arcsec = watched(star, watch);
        }
        double middle = sky.hourAngle(seen) + watch.toSeconds() * Math.PI / 86164;
        now = now.plus(watch);
        double minutes = watch.toSeconds() / 60.0;
        double share = hourAngleDeg == 0 ? Math.cos(middle) : Math.sin(middle);
        return -scene.place().sign() * arcsec / (DRIFT_ARCSEC_PER_MINUTE_PER_ARCMIN * minutes * share);
    }

    private double watched(Star star, Duration watch) {
        return Math.toDegrees(
                        observer.driftDivisions(wedge, star, now, watch, Entries.DIVISION_RAD, ReticleLine.BY_TRAIL)
                                * Entries.DIVISION_RAD)
                * 3600;
    }

    private static Star nearest(SeenSky sky, double hourAngleDeg) {
        return Catalogue.stars().stream()
                .filter(one -> one.magnitude() <= BRIGHT)
                .filter(one -> suits(sky, one, 75))
                .min(Comparator.comparingDouble(one -> errorDeg(sky, one, hourAngleDeg)))
                .orElseThrow();
    }

    private static boolean suits(SeenSky sky, Star star, double highestDeclinationDeg) {
        double[] seen = sky.direction(star);
        double altitude = Math.toDegrees(Directions.altitude(seen));
        return altitude > LOWEST_DEG
                && altitude < HIGHEST_DEG
                && Math.abs(Math.toDegrees(sky.declination(seen))) < highestDeclinationDeg;
    }

    private static double errorDeg(SeenSky sky, Star star, double hourAngleDeg) {
        double hourAngle = Math.abs(Math.toDegrees(sky.hourAngle(sky.direction(star))));
        return Math.abs(hourAngle - hourAngleDeg);
    }

    /** Corrects all of the measured offset, arcminutes on the sky; false if that is less than a hand can turn. */
    private boolean turn(Optional<Double> east, Optional<Double> up) {
        east.ifPresent(this::judgeAzimuth);
        up.ifPresent(this::judgeAltitude);
        double cos = Math.cos(scene.place().latitude());
        double azimuth = byHand(
                azimuthSense * east.map(e -> -scene.place().sign() * e / cos).orElse(0.0) / AZIMUTH_ARCMIN_PER_TURN);
        double altitude = byHand(altitudeSense * -up.orElse(0.0) / ALTITUDE_ARCMIN_PER_TURN);
        if (azimuth == 0 && altitude == 0) {
            return false;
        }
        if (clamped) {
            wedge = wedge.clamped(scene.random());
            clamped = false;
        }
        wedge = wedge.turned(Turns.straight(azimuth, altitude), scene.random());
        now = now.plus(ActionMinutes.atTheScrews(azimuth, altitude));
        if (azimuth != 0) {
            eastTurnedBy = east.orElse(0.0);
        }
        if (altitude != 0) {
            upTurnedBy = up.orElse(0.0);
        }
        return true;
    }

    private void judgeAzimuth(double east) {
        if (isWorse(eastTurnedBy, east)) {
            azimuthSense = -azimuthSense;
        }
        eastTurnedBy = 0;
    }

    private void judgeAltitude(double up) {
        if (isWorse(upTurnedBy, up)) {
            altitudeSense = -altitudeSense;
        }
        upTurnedBy = 0;
    }

    /** Whether the error to be corrected has grown by half or more. */
    private boolean isWorse(double before, double after) {
        return before * after > 0 && Math.abs(after) > WORSE_BY * Math.abs(before) && Math.abs(after) > tolerated;
    }

    /** Eighths of a turn can be counted by hand, sixteenths below one turn. */
    private static double byHand(double turns) {
        double parts = Math.abs(turns) < 1 ? 16 : 8;
        return Math.rint(turns * parts) / parts;
    }
}
