package polewright.simulation.practice;

import java.time.Duration;
import polewright.alignment.advice.ScrewTurn;
import polewright.mount.rig.HandTurns;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;

/** An action in a practice night, which takes time. */
public sealed interface PracticeAction {
    /** Calls the visitor's method for this kind. */
    <R> R accept(Visitor<R> visitor);

    /** The kind under which its time is counted. */
    Kind kind();

    /** Kinds of action, in the order in which a debrief lists them. */
    enum Kind {
        READING,
        EYEPIECE,
        DRIFT,
        FRAMES,
        TURNING,
        MOVING,
        CLAMPING,
        WAITING
    }

    /**
     * A screw turned by hand. Consecutive turns of one screw in the same sense count as one turn of the hand.
     *
     * @param turns clockwise positive
     */
    record TurnScrew(ScrewTurn.Which screw, HandTurns turns) implements PracticeAction {
        private static final double MOST_TURNS = 100;

        public TurnScrew {
            if (turns.isNone()) {
                throw new InputRefused("no turn is 0 long", "give turns such as 1/4, 1.25 or \"1/2 ccw\"");
            }
            if (!(Math.abs(turns.net()) <= MOST_TURNS && Math.abs(turns.outward()) <= MOST_TURNS)) {
                throw new InputRefused(
                        PlainNumber.asTyped(turns.net()) + " turns are beyond 100",
                        "no screw is that long: move the mount by hand instead");
            }
        }

        @Override
        public Kind kind() {
            return Kind.TURNING;
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.turnScrew(this);
        }
    }

    /**
     * The whole mount swung and tilted by hand, and levelled again.
     *
     * @param azimuth to the right for an observer facing the pole
     * @param altitude up
     */
    record MoveByHand(Angle azimuth, Angle altitude) implements PracticeAction {
        private static final double MOST_DEG = 60;

        public MoveByHand {
            if (!(Math.abs(azimuth.degrees()) <= MOST_DEG && Math.abs(altitude.degrees()) <= MOST_DEG)) {
                throw new InputRefused(
                        "a move of more than 60 degrees is too far from the pole",
                        "give degrees to the right and up, negative for left and down");
            }
        }

        @Override
        public Kind kind() {
            return Kind.MOVING;
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.moveByHand(this);
        }
    }

    /** All clamps tightened. */
    record Clamp() implements PracticeAction {
        @Override
        public Kind kind() {
            return Kind.CLAMPING;
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.clamp(this);
        }
    }

    /** All clamps loosened. */
    record Unclamp() implements PracticeAction {
        @Override
        public Kind kind() {
            return Kind.CLAMPING;
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.unclamp(this);
        }
    }

    /**
     * A look through an optic of the rig with the tube in its home position, swung in right ascension.
     *
     * @param optic its name in the rig
     */
    record RockAndLook(String optic) implements PracticeAction {
        @Override
        public Kind kind() {
            return Kind.EYEPIECE;
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.rockAndLook(this);
        }
    }

    /** The compass held along the axis and read. */
    record ReadCompass() implements PracticeAction {
        @Override
        public Kind kind() {
            return Kind.READING;
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.readCompass(this);
        }
    }

    /** The base levelled and the wedge's scale read. */
    record ReadScale() implements PracticeAction {
        @Override
        public Kind kind() {
            return Kind.READING;
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.readScale(this);
        }
    }

    /**
     * A star set on the mark in the finest optic, and watched while the mount tracks it.
     *
     * @param star its name
     * @param length how long it is watched, whole seconds
     */
    record WatchStar(String star, Duration length) implements PracticeAction {
        private static final Duration SHORTEST = Duration.ofMinutes(1);
        private static final Duration LONGEST = Duration.ofHours(1);

        public WatchStar {
            if (length.compareTo(SHORTEST) < 0 || length.compareTo(LONGEST) > 0) {
                throw new InputRefused(
                        "a star watched for " + minutes(length) + " minutes is outside 1 to 60",
                        "watch for 3 minutes to see a strong drift, 10 or more for a weak one");
            }
        }

        @Override
        public Kind kind() {
            return Kind.DRIFT;
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.watchStar(this);
        }
    }

    /**
     * A frame with the camera on the tube, in its home position except for right ascension.
     *
     * @param turned in right ascension from home, westward
     */
    record TakeFrame(Angle turned) implements PracticeAction {
        private static final double FARTHEST_DEG = 120;

        public TakeFrame {
            if (!(Math.abs(turned.degrees()) <= FARTHEST_DEG)) {
                throw new InputRefused(
                        PlainNumber.asTyped(Math.rint(turned.degrees() * 1e6) / 1e6)
                                + " degrees in right ascension are beyond 120",
                        "turn from -120 to 120, for instance -30, 0 and 30");
            }
        }

        @Override
        public Kind kind() {
            return Kind.FRAMES;
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.takeFrame(this);
        }
    }

    /** Waiting. */
    record Wait(Duration length) implements PracticeAction {
        private static final Duration LONGEST = Duration.ofHours(6);

        public Wait {
            if (length.compareTo(Duration.ofSeconds(1)) < 0 || length.compareTo(LONGEST) > 0) {
                throw new InputRefused(
                        "a wait of " + minutes(length) + " minutes is outside 0 to 360", "give minutes, such as 10");
            }
        }

        @Override
        public Kind kind() {
            return Kind.WAITING;
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.waiting(this);
        }
    }

    private static String minutes(Duration length) {
        return PlainNumber.asTyped(Math.rint(length.toMillis() / 600.0) / 100);
    }

    /**
     * One method for each kind, so that a new kind does not compile until every visitor handles it.
     *
     * @param <R> the result
     */
    interface Visitor<R> {
        R turnScrew(TurnScrew action);

        R moveByHand(MoveByHand action);

        R clamp(Clamp action);

        R unclamp(Unclamp action);

        R rockAndLook(RockAndLook action);

        R readCompass(ReadCompass action);

        R readScale(ReadScale action);

        R watchStar(WatchStar action);

        R takeFrame(TakeFrame action);

        R waiting(Wait action);
    }
}
