package polewright.rehearsal;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import polewright.axis.advice.Advice;
import polewright.axis.advice.ScrewTurn;
import polewright.axis.advice.SightingKind;
import polewright.axis.allowance.Allowance;
import polewright.axis.sighting.BodyBearing;
import polewright.axis.sighting.CompassBearing;
import polewright.axis.sighting.LevelledScale;
import polewright.axis.sighting.Sighting;
import polewright.axis.sighting.StarDrift;
import polewright.night.NightState;
import polewright.night.SuggestedStar;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;
import polewright.sky.atlas.NamedStar;
import polewright.sky.body.FixedStar;
import polewright.sky.body.SolarSystemBody;

/**
 * A night at a {@link HiddenWedge}, played by someone who does as the advice says until it says stop.
 *
 * <p>The advice sees the events only, never the wedge.
 */
public final class RehearsedNight {
    private static final Duration QUICK = Duration.ofMinutes(2);
    private static final int MOST_EVENTS = 60;

    private final NightEvent.Begun begun;
    private final List<NamedStar> stars;
    private final SimulatedObserver observer;
    private final NightState.ModelCache models = new NightState.ModelCache();
    private final List<LoggedEvent> events = new ArrayList<>();
    private final List<Moment> moments = new ArrayList<>();
    private HiddenWedge wedge;
    private Instant now;

    /**
     * The night after one event.
     *
     * @param wedge how the wedge really stands then
     */
    public record Moment(LoggedEvent event, NightState night, HiddenWedge wedge) {}

    private RehearsedNight(
            NightEvent.Begun begun, HiddenWedge wedge, Instant from, List<NamedStar> stars, RandomGenerator random) {
        this.begun = begun;
        this.wedge = wedge;
        this.now = from;
        this.stars = stars;
        this.observer = new SimulatedObserver(begun.weather(), random);
    }

    /**
     * Plays from bare ground to stop.
     *
     * @param siteName what the site is called in the log
     * @param wedge how the wedge stands at first
     * @param from when the night begins
     * @param stars to choose from
     * @return every event with what was known and what was true after it; the last advice is to stop, unless 60 events
     *     did not suffice
     */
    public static List<Moment> play(
            String siteName,
            HiddenWedge wedge,
            Allowance allowance,
            Instant from,
            List<NamedStar> stars,
            RandomGenerator random) {
        NightEvent.Begun begun = new NightEvent.Begun(
                siteName,
                wedge.site(),
                polewright.sky.place.Weather.standardAt(wedge.site().heightMetres()),
                wedge.rig(),
                allowance);
        RehearsedNight night = new RehearsedNight(begun, wedge, from, stars, random);
        night.happened(begun);
        while (night.moments.size() < MOST_EVENTS && !(night.advice() instanceof Advice.Stop)) {
            night.follow(night.advice());
        }
        return List.copyOf(night.moments);
    }

    private Advice advice() {
        return moments.get(moments.size() - 1).night().advice();
    }

    private void follow(Advice advice) {
        if (advice instanceof Advice.TakeSighting take) {
            sight(take.kind(), take.watch());
        } else if (advice instanceof Advice.TurnScrews turn) {
            turn(turn);
        } else if (advice instanceof Advice.WaitForDark) {
            now = now.plus(Duration.ofHours(1));
            happened(new NightEvent.Noted("waited for dark"));
        } else if (advice instanceof Advice.MoveByHand move) {
            wedge = wedge.moved(move.azimuth(), move.altitude(), observer.random());
            now = now.plus(QUICK).plus(QUICK);
            happened(new NightEvent.Knocked());
        } else if (advice instanceof Advice.Clamp) {
            wedge = wedge.clamped(observer.random());
            now = now.plus(QUICK);
            happened(new NightEvent.Clamped());
        }
    }

    private void sight(SightingKind kind, Duration watch) {
        switch (kind) {
            case COMPASS -> sighted(observer.compass(wedge, now, CompassBearing.USUAL_SIGMA), QUICK);
            case LEVEL_AND_SCALE -> sighted(observer.scale(wedge, now, LevelledScale.USUAL_SIGMA), QUICK);
            case SHADOW ->
                sighted(
                        observer.bearing(
                                wedge, now, SolarSystemBody.SUN, BodyBearing.Line.SHADOW, BodyBearing.USUAL_SIGMA),
                        QUICK);
            case STILL_POINT ->
                sighted(
                        observer.stillPoint(
                                wedge,
                                now,
                                star(kind),
                                begun.rig().widestOptic().orElseThrow()),
                        QUICK);
            case FRAMES ->
                sighted(observer.frames(wedge, now, begun.rig().bestCamera().orElseThrow()), QUICK.plus(QUICK));
            case DRIFT_ON_MERIDIAN, DRIFT_EAST_OR_WEST ->
                sighted(
                        observer.drift(wedge, now, star(kind), watch, StarDrift.usualSigma(begun.rig())),
                        watch.plus(QUICK));
        }
    }

    private void turn(Advice.TurnScrews advice) {
        double azimuth = 0;
        double altitude = 0;
        for (ScrewTurn turn : advice.turns()) {
            if (turn.screw() == ScrewTurn.Which.AZIMUTH) {
                azimuth = turn.clockwiseTurns();
            } else {
                altitude = turn.clockwiseTurns();
            }
        }
        if (advice.loosenFirst()) {
            wedge = wedge.clamped(observer.random());
            happened(new NightEvent.Unclamped());
        }
        wedge = wedge.turned(azimuth, altitude, observer.random());
        now = now.plus(QUICK);
        happened(new NightEvent.ScrewsTurned(azimuth, altitude));
    }

    private void sighted(Sighting sighting, Duration taken) {
        now = now.plus(taken);
        happened(new NightEvent.SightingTaken(sighting));
    }

    private void happened(NightEvent event) {
        LoggedEvent logged = new LoggedEvent(events.size() + 1L, now, event);
        events.add(logged);
        moments.add(new Moment(logged, NightState.of(events, now, models), wedge));
    }

    private FixedStar star(SightingKind kind) {
        NamedStar star = SuggestedStar.forSighting(kind, begun.site(), begun.weather(), now, stars)
                .orElseThrow(() -> new IllegalStateException("no star is up for " + kind + " at " + now))
                .star();
        return new FixedStar(star.label(), star.place());
    }
}
