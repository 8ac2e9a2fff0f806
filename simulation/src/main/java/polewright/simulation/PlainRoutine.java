package polewright.simulation;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.random.RandomGenerator;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.alignment.sighting.CompassBearing;
import polewright.alignment.sighting.LevelledScale;
import polewright.alignment.sighting.StarDrift;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Rig;
import polewright.sky.angle.Angle;
import polewright.sky.body.Ephemeris;
import polewright.sky.body.FixedStar;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/**
 * A night at a {@link HiddenWedge}, played by a careful hobbyist with a handbook and without advice: measures,
 * corrects the full measured offset, and measures again, until a measurement made with the clamps tight is good
 * enough. The wedge, instruments, observing errors and {@link ActionCosts} are those of a {@link RehearsedNight}.
 *
 * <p>The routine is common practice:
 * <ul>
 * <li>With a camera: three frames between which right ascension is turned; both screws turned by the full measured
 * offset; repeat.
 * <li>By eye: compass and scale once; then the pole star in the finder, if it is in the field, and once more if it
 * was more than a quarter of the field from its place; then a star drifting near the meridian, with azimuth corrected
 * until the drift is within the tolerance; then one in the east or west, for altitude, in the same way.
 * <li>A drift is watched for as long as a drift at the limit needs to be clear, 5 to 30 minutes; one that is clear
 * after three minutes is corrected at once.
 * <li>Within the tolerance, the clamps are tightened and everything is measured again. If it is still within, stop;
 * otherwise loosen, turn, and so on.
 * </ul>
 *
 * <p>In the plain routine's favour: the player knows the one figure that tonight's work comes to, calculates drifts
 * with the formula and the hour angle instead of by trial, counts turns by the screw's pitch, and shifts a mount by
 * hand that is too far off for its screws. What the player does not know: how uncertain a measurement is, what
 * earlier ones showed, and that screws differ from their pitch, have backlash, or move the axis sideways on a tilted
 * base.
 */
public final class PlainRoutine {
    private static final int MOST_MOMENTS = 120;
    // As in the advice: beyond this many turns, and beyond the error of a hand, the mount is moved by hand.
    private static final double MOST_TURNS = 20;
    private static final Angle LEAST_MOVE_BY_HAND = Angle.ofDegrees(2);
    private static final double FAR_IN_THE_FIELD = 0.25;
    private static final Duration FIRST_LOOK = Duration.ofMinutes(3);
    // A drift measured to one part in six is known as well as the screws are.
    private static final double CLEAR_SIGMAS = 6;
    private static final double LIMIT_IS_CLEAR_SIGMAS = 2;
    private static final int SHORTEST_WATCH_MINUTES = 5;
    private static final int LONGEST_WATCH_MINUTES = 30;
    private static final Angle USUAL_POLAR_DISTANCE = Angle.ofDegrees(45);

    private final RehearsedNight.Setting setting;
    private final Site site;
    private final Rig rig;
    private final Angle tolerated;
    private final ActionCosts costs;
    private final SimulatedObserver observer;
    private final RandomGenerator random;
    private final SingleSightingEstimate handbook;
    private final HandbookStar stars;
    private final List<Moment> moments = new ArrayList<>();
    private HiddenWedge wedge;
    private Instant now;
    private boolean clamped;

    /** The kinds of action. */
    public enum Act {
        BEGUN,
        MEASURED,
        TURNED,
        MOVED_BY_HAND,
        CLAMPED,
        STOPPED
    }

    /**
     * The night after an action.
     *
     * @param words the action, with its figures
     * @param wedge its true state then
     */
    public record Moment(Instant at, Act act, String words, HiddenWedge wedge) {}

    private PlainRoutine(RehearsedNight.Setting setting, RandomGenerator random) {
        this.setting = setting;
        this.wedge = setting.wedge();
        this.site = wedge.site();
        this.rig = wedge.rig();
        this.tolerated = setting.allowance().radius();
        this.costs = setting.costs();
        this.now = setting.from();
        Weather weather = setting.weather();
        this.observer = new SimulatedObserver(weather, random);
        this.random = random;
        this.stars = new HandbookStar(setting.stars());
        this.handbook = new SingleSightingEstimate(site, weather, rig);
    }

    /**
     * Plays from bare ground to stop.
     *
     * @param setting its allowance is the one known figure; its work is not used
     * @return every action; the last is {@link Act#STOPPED}, unless 120 did not suffice
     */
    public static List<Moment> play(RehearsedNight.Setting setting, RandomGenerator random) {
        PlainRoutine routine = new PlainRoutine(setting, random);
        routine.addMoment(Act.BEGUN, "set down");
        if (routine.rig.bestCamera().isPresent()) {
            routine.byCamera();
        } else {
            routine.byEye();
        }
        return List.copyOf(routine.moments);
    }

    private void byCamera() {
        CameraOnTube camera = new CameraOnTube(
                (fork, at) -> observer.attitude(fork, at, rig.bestCamera().orElseThrow()),
                TubeOnFork.SQUARE,
                USUAL_POLAR_DISTANCE);
        while (isOngoing()) {
            now = now.plus(costs.pointing());
            AxisOffset seen = handbook.byFrames(camera.turned(wedge, now).attitudes());
            now = now.plus(CameraOnTube.TAKES);
            measured("frames", seen);
            boolean isGood = seen.distance().compareTo(tolerated) <= 0 || !turnAll(seen);
            if (isGood && clamped) {
                addMoment(Act.STOPPED, "good enough");
            } else if (isGood) {
                clamp();
            }
        }
    }

    private void byEye() {
        CompassBearing compass = observer.compass(wedge, now, CompassBearing.USUAL_SIGMA);
        LevelledScale scale = observer.scale(wedge, now, LevelledScale.USUAL_SIGMA);
        now = now.plus(costs.reading()).plus(costs.reading());
        AxisOffset read = handbook.byReadings(compass, scale);
        measured("compass and scale", read);
        turnAll(read);
        rig.widestOptic().ifPresent(this::byPoleStar);
        boolean eastIsGood = false;
        boolean upIsGood = false;
        while (isOngoing()) {
            if (!eastIsGood) {
                AxisOffset seen =
                        new AxisOffset(handbook.eastByDrift(drift(HandbookStar::nearTheMeridian)), Angle.ZERO);
                measured("drift near the meridian", seen);
                eastIsGood = seen.distance().compareTo(shareOfTolerated()) <= 0 || !turnAll(seen);
            } else if (!upIsGood) {
                AxisOffset seen = new AxisOffset(Angle.ZERO, handbook.upByDrift(drift(HandbookStar::inTheEastOrWest)));
                measured("drift in the east or west", seen);
                upIsGood = seen.distance().compareTo(shareOfTolerated()) <= 0 || !turnAll(seen);
            } else if (clamped) {
                addMoment(Act.STOPPED, "good enough");
            } else {
                clamp();
                eastIsGood = false;
                upIsGood = false;
            }
        }
    }

    /**
     * Sets the pole star to its place relative to the centre of rotation; twice if it was far off, because long turns
     * come out short.
     */
    private void byPoleStar(Optic finder) {
        Angle far = finder.field().times(FAR_IN_THE_FIELD);
        Angle seenAt = finder.field();
        for (int i = 0; i < 2 && seenAt.compareTo(far) > 0; i++) {
            Optional<FixedStar> star = poleStarVisible(finder);
            if (star.isEmpty()) {
                return;
            }
            AxisOffset seen = handbook.byStillPoint(observer.stillPoint(wedge, now, star.get(), finder));
            now = now.plus(costs.stillPoint());
            measured("pole star about the still point", seen);
            turnAll(seen);
            seenAt = seen.distance();
        }
    }

    private Optional<FixedStar> poleStarVisible(Optic finder) {
        ObservingMoment sky = sky();
        return stars.ofThePole(sky)
                .filter(star -> Vector3D.angle(
                                sky.refracted(Ephemeris.apparent(star, sky)).enu(), wedge.axis())
                        < finder.field().radians() / 2);
    }

    /** A clear drift is seen early; any other is watched for as long as the limit needs. */
    private StarDrift drift(BiFunction<HandbookStar, ObservingMoment, Optional<FixedStar>> which) {
        now = now.plus(costs.settingAStar());
        FixedStar star = which.apply(stars, sky())
                .orElseThrow(() -> new IllegalStateException("no star suits a drift at " + now));
        Angle sigma = StarDrift.usualSigma(rig);
        StarDrift early = observer.drift(wedge, now, star, FIRST_LOOK, sigma);
        boolean isClear = early.drift().angle().compareTo(sigma.times(CLEAR_SIGMAS)) > 0;
        StarDrift drift = isClear ? early : observer.drift(wedge, now, star, usualWatch(), sigma);
        now = now.plus(drift.length());
        return drift;
    }

    /** How long a drift at the limit needs to be clear, in steps of five minutes. */
    private Duration usualWatch() {
        double minutes = LIMIT_IS_CLEAR_SIGMAS
                * StarDrift.usualSigma(rig).arcseconds()
                / (SingleSightingEstimate.DRIFT_ARCSEC_PER_MINUTE_PER_ARCMIN
                        * shareOfTolerated().arcminutes());
        long roundedUp = 5 * (long) Math.ceil(minutes / 5);
        return Duration.ofMinutes(Math.min(LONGEST_WATCH_MINUTES, Math.max(SHORTEST_WATCH_MINUTES, roundedUp)));
    }

    /** The tolerance for each direction alone, so that both together are within it. */
    private Angle shareOfTolerated() {
        return tolerated.times(Math.sqrt(0.5));
    }

    /** Turns both screws by the full amount; false if that is less than a hand can turn. */
    private boolean turnAll(AxisOffset seen) {
        double azimuth = seen.east().radians() == 0 ? 0 : handbook.azimuthTurns(seen);
        double altitude = seen.up().radians() == 0 ? 0 : handbook.altitudeTurns(seen);
        if (azimuth == 0 && altitude == 0) {
            return false;
        }
        if (clamped) {
            wedge = wedge.clamped(random);
            clamped = false;
        }
        if (Math.max(Math.abs(azimuth), Math.abs(altitude)) > MOST_TURNS
                && seen.distance().compareTo(LEAST_MOVE_BY_HAND) > 0) {
            wedge = wedge.moved(
                    rig.azimuthScrew().move(azimuth, site.poleAltitude()),
                    rig.altitudeScrew().move(altitude, site.poleAltitude()),
                    random);
            now = now.plus(costs.movingByHand());
            addMoment(Act.MOVED_BY_HAND, "moved the mount by hand");
            return true;
        }
        wedge = wedge.turned(azimuth, altitude, random);
        now = now.plus(costs.atTheScrews((azimuth == 0 ? 0 : 1) + (altitude == 0 ? 0 : 1)));
        addMoment(Act.TURNED, String.format(Locale.ROOT, "turned azimuth %.4f, altitude %.4f", azimuth, altitude));
        return true;
    }

    private void clamp() {
        wedge = wedge.clamped(random);
        clamped = true;
        now = now.plus(costs.clamping());
        addMoment(Act.CLAMPED, "clamped");
    }

    private ObservingMoment sky() {
        return ObservingMoment.of(site, SkyTime.of(now), setting.weather());
    }

    private boolean isOngoing() {
        return moments.size() < MOST_MOMENTS && moments.get(moments.size() - 1).act() != Act.STOPPED;
    }

    private void measured(String what, AxisOffset seen) {
        addMoment(
                Act.MEASURED,
                String.format(
                        Locale.ROOT,
                        "%s: %.1f' east, %.1f' up",
                        what,
                        seen.east().arcminutes(),
                        seen.up().arcminutes()));
    }

    private void addMoment(Act act, String words) {
        moments.add(new Moment(now, act, words, wedge));
    }
}
