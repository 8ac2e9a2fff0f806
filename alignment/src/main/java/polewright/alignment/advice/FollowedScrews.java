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
 * Live adjustment from camera frames: orders for both screws, and the turns that each frame shows to have been made.
 *
 * <p>A frame measures the axis to some arcseconds, but not the hand. The hand is assumed to turn as ordered, so an axis
 * that moves the opposite way shows that the screw is reversed. The size of a turn is inferred from its effect, or
 * taken from the order if the order was carried out in one go between two frames. The turns are logged with an
 * uncertainty large enough that the night's fix learns no more from them than they contain, and the fix in turn
 * supplies the screws' directions and gains.
 */
public final class FollowedScrews {
    // Above the noise of seeing and of a hand on the tube, and below the smallest deliberate turn.
    private static final Angle LEAST_MOVE = Angle.ofArcminutes(0.5);
    private static final double SIGMAS = 5;
    // A leaning base moves the axis sideways by less than this fraction of the move.
    private static final double ASIDE = 0.1;
    // Carrying out an order takes about this long; an earlier frame shows the axis on its way.
    private static final Duration ONE_ORDER = Duration.ofSeconds(15);
    // The first turn of a screw tests its direction: large enough for frames to show clearly, small enough to turn back
    // soon.
    private static final Angle TRIAL = Angle.ofArcminutes(10);
    private static final double LEAST_TRIAL_TURNS = 0.25;
    private static final int TRIALS_A_TURN = 8;

    private final Setting setting;
    private final Track track;
    private final FollowedScrew azimuth;
    private final FollowedScrew altitude;

    /** The assumed effect of the screws, and where they are to move the axis. */
    private record Setting(Site site, Rig rig, ScrewGains gains, Tightening tightening) {
        AxisState.Turns needed(AxisPointing from) {
            return gains.turnsBetween(from, AxisPointing.of(site, tightening.goal()), rig);
        }
    }

    /**
     * The motion of the axis so far.
     *
     * @param logged where the axis was at the last log entry
     * @param isFollowing whether a frame has been received since the first order
     * @param isResting whether the axis is at rest
     * @param hasMoved whether it has moved since the last log entry
     * @param counted turns counted by hand and logged since the last frame
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

        /** The latest leg of a screw: the turns counted by hand, or else the order shown. */
        FollowedScrew.Leg leg(Order shown, Function<Made, HandTurns> screw) {
            // The order "the other way" does not say which way is clockwise.
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
     * What is known about the screws.
     *
     * @param rig with the screw directions that the night has shown
     * @param gains relative to that rig
     * @param senses how certain the screw directions are
     */
    public record Known(Rig rig, ScrewGains gains, ScrewSenses senses) {
        public static Known of(Fix fix) {
            return new Known(fix.rig(), fix.state().gains(), fix.senses());
        }

        /** From the rig description and earlier nights. */
        public static Known byTheRig(Rig rig) {
            return new Known(rig, ScrewGains.ofRig(rig), ScrewSenses.before(rig));
        }

        private double azimuthLogOdds() {
            return ScrewSenses.logOdds(senses.azimuth());
        }

        private double altitudeLogOdds() {
            return ScrewSenses.logOdds(senses.altitude());
        }
    }

    /**
     * The screws before the first frame.
     *
     * @param axis where the axis points according to the log
     * @param at when that was measured
     */
    public static FollowedScrews of(Site site, Known known, Allowance allowance, AxisPointing axis, Instant at) {
        return new FollowedScrews(
                new Setting(site, known.rig(), known.gains(), new Tightening(allowance, known.rig())),
                new Track(axis, at, axis, false, true, false, Optional.empty()),
                FollowedScrew.held(known.azimuthLogOdds()),
                FollowedScrew.held(known.altitudeLogOdds()));
    }

    /**
     * The screws after one more frame.
     *
     * @param now where the axis points in it
     * @param sigma of the move since the previous frame, 1 sigma
     * @param when the time of the frame, later than every earlier one
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

    /** A screw's move and the move needed before and after it, in nominal turns. */
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

    /** The screws after the turns have been logged, with what the night has learned from them. */
    public FollowedScrews logged(Known learned) {
        Rig before = setting.rig();
        Rig rig = learned.rig();
        FollowedScrew newAzimuth =
                azimuth.logged(isReversed(before.azimuthScrew(), rig.azimuthScrew()), learned.azimuthLogOdds());
        FollowedScrew newAltitude =
                altitude.logged(isReversed(before.altitudeScrew(), rig.altitudeScrew()), learned.altitudeLogOdds());
        // The gain of a screw whose direction differs from the fix is not known yet.
        boolean agrees = newAzimuth.sense() > 0 && newAltitude.sense() > 0;
        return new FollowedScrews(
                new Setting(
                        setting.site(),
                        rig,
                        agrees ? learned.gains() : ScrewGains.ofRig(rig),
                        new Tightening(setting.tightening().allowance(), rig)),
                track.inTheLog(),
                newAzimuth,
                newAltitude);
    }

    /**
     * The screws after the night was reinterpreted: its directions apply, and turns since the last log entry are kept.
     */
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
                azimuth.relearned(isReversed(before.azimuthScrew(), rig.azimuthScrew()), learned.azimuthLogOdds()),
                altitude.relearned(isReversed(before.altitudeScrew(), rig.altitudeScrew()), learned.altitudeLogOdds()));
    }

    private static boolean isReversed(Screw before, Screw now) {
        return before.clockwise() != now.clockwise();
    }

    /** Whether there are turns to log: the axis has moved since the last log entry and is at rest. */
    public boolean isToLog() {
        return track.hasMoved() && track.isResting();
    }

    /** Whether the axis has moved since the last log entry. */
    public boolean hasMoved() {
        return track.hasMoved();
    }

    /**
     * Turns made by hand since the last log entry.
     *
     * @param azimuth of the azimuth screw
     * @param altitude of the altitude screw
     */
    public record Made(HandTurns azimuth, HandTurns altitude) {}

    /** The turns since the last log entry; empty if there are none or no plausible turns explain the move. */
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
     * The order for one screw.
     *
     * @param clockwiseTurns turns to make now, clockwise positive
     * @param remaining all turns that remain, clockwise positive, limited to the range of a wedge
     * @param isTrial whether this turn tests the direction of the screw first
     * @param isTheOtherWay whether the last frame showed it moving away from the aim, so that it has to be turned the
     *     other way
     * @param isWayUnknown whether the hand may have slipped then, so that the clockwise sense cannot be given
     */
    public record Order(
            double clockwiseTurns, double remaining, boolean isTrial, boolean isTheOtherWay, boolean isWayUnknown) {
        /** Whether the screw would reach the end of its range first. */
        public boolean isBeyondTheScrew() {
            return Math.abs(remaining) >= TurnPlanner.MOST_TURNS;
        }
    }

    /** The orders for both screws. */
    public record Orders(Order azimuth, Order altitude) {}

    /** The present orders. */
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

    /** The direction in which a screw moved the axis away from the aim. */
    public enum WrongWay {
        LEFT,
        RIGHT,
        UP,
        DOWN
    }

    /** The direction in which the azimuth screw moved the axis if that was away from the aim in the last frame. */
    public Optional<WrongWay> azimuthWentWrong() {
        return azimuth.isToTurnBack()
                ? Optional.of(wentPositive(setting.rig().azimuthScrew(), azimuth) ? WrongWay.RIGHT : WrongWay.LEFT)
                : Optional.empty();
    }

    /** The direction in which the altitude screw moved the axis if that was away from the aim in the last frame. */
    public Optional<WrongWay> altitudeWentWrong() {
        return altitude.isToTurnBack()
                ? Optional.of(wentPositive(setting.rig().altitudeScrew(), altitude) ? WrongWay.UP : WrongWay.DOWN)
                : Optional.empty();
    }

    private static boolean wentPositive(Screw screw, FollowedScrew followed) {
        return screw.clockwise().sign() * followed.wentWrong() > 0;
    }

    /** Whether a screw that still has to be turned has a direction that is only assumed. */
    public boolean isSenseAssumed() {
        Orders now = orders();
        return isAssumed(azimuth, now.azimuth()) || isAssumed(altitude, now.altitude());
    }

    private static boolean isAssumed(FollowedScrew screw, Order order) {
        return !screw.isSenseSure() && Math.abs(order.remaining()) >= FollowedScrew.LEAST_ORDER_TURNS;
    }

    /** After turns counted by hand have been logged: the next frame shows these, whatever was ordered. */
    public FollowedScrews counted(HandTurns azimuthTurns, HandTurns altitudeTurns) {
        return new FollowedScrews(
                setting, track.counted(Optional.of(new Made(azimuthTurns, altitudeTurns))), azimuth, altitude);
    }

    /** Where the axis was in the last frame. */
    public AxisPointing axis() {
        return track.axis();
    }

    public Tightening tightening() {
        return setting.tightening();
    }
}
