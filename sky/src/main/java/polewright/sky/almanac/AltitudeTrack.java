package polewright.sky.almanac;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.interpolation.SplineInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import polewright.sky.angle.Angle;
import polewright.sky.body.BodyAppearance;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.SkyBody;
import polewright.sky.body.SolarSystem;
import polewright.sky.body.SolarSystemBody;
import polewright.sky.place.ApparentPlace;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.Interval;
import polewright.sky.time.SiderealRate;
import polewright.sky.time.SkyTime;

/**
 * The altitude of a body over a site during some hours, computed once and then cheap to query.
 *
 * <p>The body's topocentric apparent place is computed at a few nodes (every hour for the Moon, every four hours for
 * the rest, and three nodes beyond either end) and interpolated by cubic splines in a frame that rotates with the sky;
 * the rotation itself is exact. The interpolation error is under 1″ (2″ for the Moon), a fifth of a second of time
 * where altitude changes fastest. An altitude then takes a microsecond instead of a millisecond.
 *
 * <p>UT1−UTC is taken as 0, so all times are off by its value, under 0.9 s. Altitudes are airless.
 */
public final class AltitudeTrack {
    private static final Duration MOON_NODES = Duration.ofHours(1);
    private static final Duration OTHER_NODES = Duration.ofHours(4);
    /** The end effects of a natural spline decay by a factor of 3.7 per node. */
    private static final int NODES_BEYOND = 3;
    /** The sky turns 2.5° in one step: no body crosses an altitude twice within that. */
    private static final double STEP_SECONDS = 600;

    private static final double ROOT_SECONDS = 0.001;
    private static final int SOLVER_ORDER = 5;
    private static final int MOST_EVALUATIONS = 100;

    private final Interval when;
    private final double sinLatitude;
    private final double cosLatitude;
    private final PolynomialSplineFunction x;
    private final PolynomialSplineFunction y;
    private final PolynomialSplineFunction z;
    private final PolynomialSplineFunction semiDiameterRad;

    private AltitudeTrack(SkyBody body, Site site, Interval when) {
        this.when = when;
        this.sinLatitude = site.latitude().sin();
        this.cosLatitude = site.latitude().cos();
        double spacing = (body == SolarSystemBody.MOON ? MOON_NODES : OTHER_NODES).toSeconds();
        int nodes = (int) Math.ceil(seconds(when.to()) / spacing) + 1 + 2 * NODES_BEYOND;
        double[] at = new double[nodes];
        double[][] values = new double[4][nodes];
        for (int i = 0; i < nodes; i++) {
            at[i] = (i - NODES_BEYOND) * spacing;
            ObservingMoment moment = momentAt(site, instant(at[i]));
            ApparentPlace apparent;
            if (body instanceof SolarSystemBody near) {
                BodyAppearance appearance = SolarSystem.appearance(near, moment);
                apparent = appearance.place();
                values[3][i] = appearance.semiDiameter().radians();
            } else {
                apparent = Ephemeris.apparent(body, moment);
            }
            HourAnglePlace place = moment.hourAngle(apparent);
            double longitude =
                    SiderealRate.RAD_PER_SECOND * at[i] - place.hourAngle().radians();
            values[0][i] = place.declination().cos() * Math.cos(longitude);
            values[1][i] = place.declination().cos() * Math.sin(longitude);
            values[2][i] = place.declination().sin();
        }
        SplineInterpolator splines = new SplineInterpolator();
        this.x = splines.interpolate(at, values[0]);
        this.y = splines.interpolate(at, values[1]);
        this.z = splines.interpolate(at, values[2]);
        this.semiDiameterRad = splines.interpolate(at, values[3]);
    }

    public static AltitudeTrack of(SkyBody body, Site site, Interval when) {
        return new AltitudeTrack(body, site, when);
    }

    /** Airless topocentric altitude of the centre, at an instant of the track. */
    public Angle altitude(Instant at) {
        return new Angle(Math.asin(sine(seconds(at))));
    }

    /** Airless topocentric altitude of the upper edge of the disc, at an instant of the track. */
    public Angle upperLimb(Instant at) {
        return altitude(at).plus(new Angle(semiDiameterRad.value(seconds(at))));
    }

    /** All crossings of an airless altitude by the centre, in time order. */
    public List<Crossing> crossings(Angle altitude) {
        return crossings(t -> sine(t) - altitude.sin());
    }

    /** All crossings of an airless altitude near the horizon by the upper limb, in time order. */
    public List<Crossing> crossingsOfUpperLimb(Angle altitude) {
        return crossings(t -> Math.sin(Math.asin(sine(t)) + semiDiameterRad.value(t)) - altitude.sin());
    }

    /** The upper transits (hour angle 0), in time order. */
    public List<Instant> transits() {
        return crossings(this::sineOfHourAngle).stream()
                .filter(c -> c.sense() == Crossing.Sense.RISING)
                .map(Crossing::at)
                .toList();
    }

    /** The lowest point; one of the ends if there is no minimum between them. */
    public Extreme lowest() {
        return extreme(-1);
    }

    /** The highest point; one of the ends if there is no maximum between them. */
    public Extreme highest() {
        return extreme(1);
    }

    /**
     * A turning point of the altitude, or an end of the track.
     *
     * @param altitude airless, of the centre
     */
    public record Extreme(Instant at, Angle altitude) {}

    private Extreme extreme(int sign) {
        double best = 0;
        for (double t : samples(this::sine)) {
            if (sign * sine(t) > sign * sine(best)) {
                best = t;
            }
        }
        return new Extreme(instant(best), new Angle(Math.asin(sine(best))));
    }

    private List<Crossing> crossings(UnivariateFunction above) {
        BracketingNthOrderBrentSolver solver = new BracketingNthOrderBrentSolver(ROOT_SECONDS, SOLVER_ORDER);
        List<Crossing> crossings = new ArrayList<>();
        List<Double> samples = samples(above);
        for (int i = 1; i < samples.size(); i++) {
            double from = samples.get(i - 1);
            double to = samples.get(i);
            boolean rises = above.value(to) >= 0;
            if ((above.value(from) >= 0) != rises) {
                double at = solver.solve(MOST_EVALUATIONS, above, from, to);
                crossings.add(new Crossing(instant(at), rises ? Crossing.Sense.RISING : Crossing.Sense.SETTING));
            }
        }
        return crossings;
    }

    /** The ends, one time per step, and the extremes: between two neighbours the function is monotonic. */
    private List<Double> samples(UnivariateFunction f) {
        double end = seconds(when.to());
        List<Double> samples = new ArrayList<>();
        samples.add(0.0);
        double last = 0;
        int steps = (int) Math.ceil(end / STEP_SECONDS);
        for (int i = 0; i <= steps; i++) {
            double middle = Math.min(i * STEP_SECONDS, end);
            // The parabola through three samples; its vertex is good to a second, and the curve is flat there.
            double before = f.value(middle - STEP_SECONDS);
            double here = f.value(middle);
            double after = f.value(middle + STEP_SECONDS);
            double bend = before - 2 * here + after;
            double vertex = middle + (bend == 0 ? end + 1 : STEP_SECONDS * (before - after) / (2 * bend));
            boolean turns = Math.abs(vertex - middle) <= STEP_SECONDS / 2 * 1.01;
            for (double t : turns && vertex < middle ? new double[] {vertex, middle} : new double[] {middle, vertex}) {
                if (t > last && t <= end && (t == middle || turns)) {
                    samples.add(t);
                    last = t;
                }
            }
        }
        return samples;
    }

    private double sine(double t) {
        double turn = SiderealRate.RAD_PER_SECOND * t;
        double vx = x.value(t);
        double vy = y.value(t);
        double vz = z.value(t);
        double sine = sinLatitude * vz + cosLatitude * (vx * Math.cos(turn) + vy * Math.sin(turn));
        return sine / Math.sqrt(vx * vx + vy * vy + vz * vz);
    }

    /** Negative east of the meridian; on its lower half it falls through 0. */
    private double sineOfHourAngle(double t) {
        return Math.sin(SiderealRate.RAD_PER_SECOND * t - Math.atan2(y.value(t), x.value(t)));
    }

    private double seconds(Instant at) {
        return Duration.between(when.from(), at).toNanos() * 1e-9;
    }

    private Instant instant(double seconds) {
        return when.from().plusMillis(Math.round(seconds * 1000));
    }

    /** Airless places need no weather. */
    static ObservingMoment momentAt(Site site, Instant at) {
        return ObservingMoment.of(site, SkyTime.of(at), Weather.AIRLESS);
    }
}
