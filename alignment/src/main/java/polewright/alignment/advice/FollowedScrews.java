package polewright.alignment.advice;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Function;
import polewright.alignment.allowance.Allowance;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.Fix;
import polewright.alignment.fix.ScrewGains;
import polewright.alignment.fix.ScrewSenses;
import polewright.mount.AxisPointing;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * Orders for a hand on the screws while frames are followed, and what each frame shows that the hand has done.
 *
 * <p>A frame sees the axis to some arcseconds, but not the hand. So the hand is taken to have turned as it was ordered: an
 * axis that then goes the other way shows that the screw does. How far was turned is known by what it did, and only where
 * an order was made in one go, between two frames, by the order. What was made is logged as turns so uncertain that the
 * night's fix learns from them no more than they tell; the fix in turn says how the screws go from then on.
 */
public final class FollowedScrews {
    // Above the noise of seeing and of a hand on the tube, and below the smallest deliberate turn.
    private static final Angle LEAST_MOVE = Angle.ofArcminutes(0.5);
    private static final double SIGMAS = 5;
    // A leaning base takes the axis aside by less than this share of the way.
    private static final double ASIDE = 0.1;
    // What a hand makes of an order takes about so long; frames that come sooner see it on the way.
    private static final Duration ONE_ORDER = Duration.ofSeconds(15);
    // The first turn of a screw tries which way it goes: as much as frames see beyond doubt, and is soon turned back.
    private static final Angle TRIAL = Angle.ofArcminutes(10);
    private static final double LEAST_TRIAL_TURNS = 0.25;
    private static final int TRIALS_A_TURN = 8;

    private final Setting setting;
    private final Track track;
    private final FollowedScrew azimuth;
    private final FollowedScrew altitude;

    /** What the screws are held to do, and where they are to take the axis. */
    private record Setting(Site site, Rig rig, ScrewGains gains, Tightening tightening) {
        AxisState.Turns needed(AxisPointing from) {
            return gains.turnsBetween(from, AxisPointing.of(site, tightening.goal()), rig);
        }
    }

    /**
     * Where the axis has got to.
     *
     * @param logged where the log last had it
     * @param isFollowing whether a frame has been seen since the first order
     * @param isResting whether it has come to rest there
     * @param hasMoved whether it has left the place that is logged
     * @param counted turns that a hand counted since the last frame, and that are logged
     */
    private record Track(
            AxisPointing axis,
            Instant at,
            AxisPointing logged,
            boolean isFollowing,
            boolean isResting,
            boolean hasMoved,
            Optional<Made> counted) {
        Track inTheLog() {
            return new Track(axis, at, axis, isFollowing, isResting, false, Optional.empty());
        }

        Track counted(Optional<Made> turns) {
            return new Track(axis, at, logged, isFollowing, isResting, hasMoved, turns);
        }

        /** What the hand was last heard to do with a screw: what it counted, or else what it was shown. */
        FollowedScrew.Leg leg(Order shown, Function<Made, HandTurns> screw) {
            // "The other way" says nothing of clockwise.
            return counted.map(turns ->
                            FollowedScrew.Leg.ordered(screw.apply(turns).net(), true))
                    .orElse(
                            shown.isWayUnknown()
                                    ? FollowedScrew.Leg.NONE
                                    : FollowedScrew.Leg.ordered(shown.clockwiseTurns(), isFollowing));
        }
    }

    private FollowedScrews(Setting setting, Track track, FollowedScrew azimuth, FollowedScrew altitude) {
        this.setting = setting;
        this.track = track;
        this.azimuth = azimuth;
        this.altitude = altitude;
    }

    /**
     * What is known of the screws.
     *
     * @param rig as the night has learned it
     * @param gains what the screws do by it
     * @param senses how sure it is which way they go
     */
    public record Known(Rig rig, ScrewGains gains, ScrewSenses senses) {
        public static Known of(Fix fix) {
            return new Known(fix.rig(), fix.state().gains(), fix.senses());
        }

        /** By the rig's word, and what earlier nights have shown. */
        public static Known byTheRig(Rig rig) {
            return new Known(rig, ScrewGains.asTheRigSays(rig), ScrewSenses.before(rig));
        }

        private double azimuthLogOdds() {
            return ScrewSenses.logOdds(senses.azimuth());
        }

        private double altitudeLogOdds() {
            return ScrewSenses.logOdds(senses.altitude());
        }
    }

    /**
     * Screws that no frame has seen yet.
     *
     * @param axis where the axis points, as it is logged
     * @param at when that was seen
     */
    public static FollowedScrews of(Site site, Known known, Allowance allowance, AxisPointing axis, Instant at) {
        return new FollowedScrews(
                new Setting(site, known.rig(), known.gains(), new Tightening(allowance, known.rig())),
                new Track(axis, at, axis, false, true, false, Optional.empty()),
                FollowedScrew.held(known.azimuthLogOdds()),
                FollowedScrew.held(known.altitudeLogOdds()));
    }

    /**
     * What one more frame shows.
     *
     * @param now where the axis points by it
     * @param sigma of its way since the frame before, 1 sigma
     * @param when after every frame before it
     */
    public FollowedScrews seeing(AxisPointing now, Angle sigma, Instant when) {
        AxisPointing before = track.axis();
        boolean inOneGo = Duration.between(track.at(), when).compareTo(ONE_ORDER) >= 0;
        AxisState.Turns effect = setting.gains().turnsBetween(before, now, setting.rig());
        AxisState.Turns then = setting.needed(before);
        AxisState.Turns left = setting.needed(now);
        double least = Math.max(LEAST_MOVE.radians(), SIGMAS * sigma.radians());
        double azimuthMove =
                Math.abs(now.azimuth().minus(before.azimuth()).wrappedSigned().radians())
                        * before.altitude().cos();
        double altitudeMove = Math.abs(now.altitude().minus(before.altitude()).radians());
        Orders shown = orders();
        return new FollowedScrews(
                setting,
                new Track(
                        now,
                        when,
                        track.logged(),
                        true,
                        inOneGo || Math.hypot(azimuthMove, altitudeMove) <= least,
                        now.separation(track.logged()).radians() > least,
                        Optional.empty()),
                seen(
                        azimuth,
                        track.leg(shown.azimuth(), Made::azimuth),
                        new Seen(effect.azimuth(), then.azimuth(), left.azimuth(), inOneGo),
                        azimuthMove > Math.max(least, ASIDE * altitudeMove)),
                seen(
                        altitude,
                        track.leg(shown.altitude(), Made::altitude),
                        new Seen(effect.altitude(), then.altitude(), left.altitude(), inOneGo),
                        altitudeMove > Math.max(least, ASIDE * azimuthMove)));
    }

    /** How far a screw went, and what remains of it, turns by the rig. */
    private record Seen(double effect, double before, double after, boolean inOneGo) {
        boolean isAwayFromAim() {
            return effect * before < 0
                    && Math.abs(before) >= FollowedScrew.LEAST_ORDER_TURNS
                    && Math.abs(after) > Math.abs(before);
        }
    }

    private FollowedScrew seen(FollowedScrew screw, FollowedScrew.Leg asked, Seen seen, boolean hasMoved) {
        boolean wasResting = seen.inOneGo()
                || track.isResting()
                || track.counted().isPresent()
                || screw.leg().equals(FollowedScrew.Leg.NONE);
        FollowedScrew next = wasResting ? screw.asked(asked) : screw;
        return hasMoved ? next.moved(seen.effect(), seen.isAwayFromAim(), seen.inOneGo()) : next.rested();
    }

    /** What was seen is in the log, and this is what the night has learned with it. */
    public FollowedScrews logged(Known learned) {
        Rig before = setting.rig();
        Rig rig = learned.rig();
        FollowedScrew newAzimuth =
                azimuth.logged(isTurnedRound(before.azimuthScrew(), rig.azimuthScrew()), learned.azimuthLogOdds());
        FollowedScrew newAltitude =
                altitude.logged(isTurnedRound(before.altitudeScrew(), rig.altitudeScrew()), learned.altitudeLogOdds());
        // What a screw does that goes the other way than the fix has it is not known yet.
        boolean agrees = newAzimuth.sense() > 0 && newAltitude.sense() > 0;
        return new FollowedScrews(
                new Setting(
                        setting.site(),
                        rig,
                        agrees ? learned.gains() : ScrewGains.asTheRigSays(rig),
                        new Tightening(setting.tightening().allowance(), rig)),
                track.inTheLog(),
                newAzimuth,
                newAltitude);
    }

    /** The night is read otherwise now: its word on the screws counts, and what was seen since the log last had it is kept. */
    public FollowedScrews relearned(Known learned) {
        Rig before = setting.rig();
        Rig rig = learned.rig();
        return new FollowedScrews(
                new Setting(
                        setting.site(),
                        rig,
                        learned.gains(),
                        new Tightening(setting.tightening().allowance(), rig)),
                track,
                azimuth.relearned(isTurnedRound(before.azimuthScrew(), rig.azimuthScrew()), learned.azimuthLogOdds()),
                altitude.relearned(
                        isTurnedRound(before.altitudeScrew(), rig.altitudeScrew()), learned.altitudeLogOdds()));
    }

    private static boolean isTurnedRound(Screw before, Screw now) {
        return before.clockwise() != now.clockwise();
    }

    /** Whether the axis has moved since the log last had it, and rests: there is something to log. */
    public boolean isToLog() {
        return track.hasMoved() && track.isResting();
    }

    /** Whether the axis has moved since the log last had it. */
    public boolean hasMoved() {
        return track.hasMoved();
    }

    /**
     * What a hand has made of both screws since the log last had them.
     *
     * @param azimuth of the azimuth screw
     * @param altitude of the altitude screw
     */
    public record Made(HandTurns azimuth, HandTurns altitude) {}

    /** The turns since the log last had them; empty where no turns of the screws explain what was seen. */
    public Optional<Made> made() {
        HandTurns byAzimuth = azimuth.made();
        HandTurns byAltitude = altitude.made();
        boolean isAny = !byAzimuth.isNone() || !byAltitude.isNone();
        return isAny && isWithinAWedge(byAzimuth) && isWithinAWedge(byAltitude)
                ? Optional.of(new Made(byAzimuth, byAltitude))
                : Optional.empty();
    }

    private static boolean isWithinAWedge(HandTurns made) {
        return Math.abs(made.net()) <= TurnPlanner.MOST_TURNS;
    }

    /**
     * What one screw is to do.
     *
     * @param clockwiseTurns to turn now, clockwise positive
     * @param remaining all that remains, clockwise positive, never more than a wedge has
     * @param isTrial whether this turn is to show first which way the screw goes
     * @param isTheOtherWay whether the last frame saw it go away from the aim, so that it is to be turned the other way
     * @param isWayUnknown whether then the hand may have slipped, so that clockwise or not cannot be said
     */
    public record Order(
            double clockwiseTurns, double remaining, boolean isTrial, boolean isTheOtherWay, boolean isWayUnknown) {
        /** Whether the screw would come to its end first. */
        public boolean isBeyondTheScrew() {
            return Math.abs(remaining) >= TurnPlanner.MOST_TURNS;
        }
    }

    /** What both are to do. */
    public record Orders(Order azimuth, Order altitude) {}

    /** What to do now. */
    public Orders orders() {
        AxisPointing axis = track.axis();
        Rig rig = setting.rig();
        AxisState.Turns needed = setting.needed(axis);
        double azimuthTrial =
                rig.azimuthScrew().turnsFor(TRIAL.times(1 / axis.altitude().cos()), axis.altitude());
        double altitudeTrial = rig.altitudeScrew().turnsFor(TRIAL, axis.altitude());
        return new Orders(
                order(azimuth, needed.azimuth(), azimuthTrial), order(altitude, needed.altitude(), altitudeTrial));
    }

    private static Order order(FollowedScrew screw, double needed, double seenWell) {
        double remaining = Math.max(-TurnPlanner.MOST_TURNS, Math.min(TurnPlanner.MOST_TURNS, screw.sense() * needed));
        double trial = Math.max(LEAST_TRIAL_TURNS, Math.ceil(Math.abs(seenWell) * TRIALS_A_TURN) / TRIALS_A_TURN);
        boolean isTrial = !screw.isSenseSure() && Math.abs(remaining) > trial;
        return new Order(
                isTrial ? Math.copySign(trial, remaining) : remaining,
                remaining,
                isTrial,
                screw.isToTurnBack(),
                screw.isToTurnBack() && screw.isHandDoubted());
    }

    /** How the last frame saw a screw go away from the aim. */
    public enum WrongWay {
        LEFT,
        RIGHT,
        UP,
        DOWN
    }

    /** Whether and which way the azimuth screw took the axis away from the aim since the frame before. */
    public Optional<WrongWay> azimuthWentWrong() {
        return azimuth.isToTurnBack()
                ? Optional.of(wentPositive(setting.rig().azimuthScrew(), azimuth) ? WrongWay.RIGHT : WrongWay.LEFT)
                : Optional.empty();
    }

    /** Whether and which way the altitude screw took the axis away from the aim since the frame before. */
    public Optional<WrongWay> altitudeWentWrong() {
        return altitude.isToTurnBack()
                ? Optional.of(wentPositive(setting.rig().altitudeScrew(), altitude) ? WrongWay.UP : WrongWay.DOWN)
                : Optional.empty();
    }

    private static boolean wentPositive(Screw screw, FollowedScrew followed) {
        return screw.clockwise().sign() * followed.wentWrong() > 0;
    }

    /** Whether it is still only assumed which way a screw goes that has to be turned. */
    public boolean isSenseAssumed() {
        Orders now = orders();
        return isAssumed(azimuth, now.azimuth()) || isAssumed(altitude, now.altitude());
    }

    private static boolean isAssumed(FollowedScrew screw, Order order) {
        return !screw.isSenseSure() && Math.abs(order.remaining()) >= FollowedScrew.LEAST_ORDER_TURNS;
    }

    /** Turns that a hand counted are in the log: the next frame sees them, whatever was ordered. */
    public FollowedScrews counted(HandTurns azimuthTurns, HandTurns altitudeTurns) {
        return new FollowedScrews(
                setting, track.counted(Optional.of(new Made(azimuthTurns, altitudeTurns))), azimuth, altitude);
    }

    /** Where the last frame saw the axis. */
    public AxisPointing axis() {
        return track.axis();
    }

    public Tightening tightening() {
        return setting.tightening();
    }
}
