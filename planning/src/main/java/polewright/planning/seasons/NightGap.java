package polewright.planning.seasons;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.sky.angle.Angle;

/** The movement of the axis between two nights, while the mount was not in use. */
public sealed interface NightGap {
    /** Calls the visitor's method for this kind. */
    <R> R accept(Visitor<R> visitor);

    NightRecord from();

    NightRecord to();

    /**
     * A drift from the axis at the end of one night to that at the beginning of a later one.
     *
     * @param before the axis at the end of the earlier night
     * @param after the axis at the beginning of the later one
     */
    record Drifted(NightRecord from, NightRecord to, AxisAtTime before, AxisAtTime after) implements NightGap {
        // Exceeded by chance once in a hundred with two degrees of freedom: −2 ln 0.01, exactly.
        private static final double ONCE_IN_A_HUNDRED = 9.2103;

        /** The movement on the sky. */
        public AxisOffset drift() {
            return after.offset().minus(before.offset());
        }

        /** Covariance of {@link #drift}: both ends together. */
        public OffsetCovariance covariance() {
            return before.covariance().plus(after.covariance());
        }

        /** Whether it is larger than the uncertainty explains, at the 1 % level. */
        public boolean isSignificant() {
            return covariance().normalisedSquare(drift()) > ONCE_IN_A_HUNDRED;
        }

        public Duration duration() {
            return Duration.between(before.at(), after.at());
        }

        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.drifted(this);
        }
    }

    /** It moved farther than a pier does: the mount was set down again, or moved by hand. */
    record SetDownAgain(NightRecord from, NightRecord to, AxisOffset by) implements NightGap {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.setDownAgain(this);
        }
    }

    /**
     * Unknown.
     *
     * @param reason a whole sentence without its full stop
     */
    record NotKnown(NightRecord from, NightRecord to, String reason) implements NightGap {
        @Override
        public <R> R accept(Visitor<R> visitor) {
            return visitor.notKnown(this);
        }
    }

    /** The most that an undisturbed pier or wedge moves: beyond this someone carried it (common practice). */
    Angle FARTHEST_DRIFT = Angle.ofDegrees(1);

    /** From each night to the next one that constrains the axis, in order. */
    static List<NightGap> among(List<NightRecord> nights) {
        List<NightRecord> telling = nights.stream().filter(n -> !n.isSilent()).toList();
        List<NightGap> gaps = new ArrayList<>();
        for (int i = 1; i < telling.size(); i++) {
            gaps.add(between(telling.get(i - 1), telling.get(i)));
        }
        return List.copyOf(gaps);
    }

    /**
     * From one night to a later one.
     *
     * @param nights all nights at the same place with the same rig, in order, including these two
     */
    static NightGap between(NightRecord from, NightRecord to, List<NightRecord> nights) {
        if (!Pier.of(from.begun()).holds(to.begun())) {
            return new NotKnown(from, to, "They differ in site or rig");
        }
        return nights.stream()
                .filter(n -> n.begunAt().isAfter(from.begunAt()) && n.begunAt().isBefore(to.begunAt()))
                .filter(NightRecord::isMoved)
                .findFirst()
                .<NightGap>map(moved -> new NotKnown(
                        from,
                        to,
                        "The mount was worked on between them, on night "
                                + moved.id().number()))
                .orElseGet(() -> between(from, to));
    }

    private static NightGap between(NightRecord from, NightRecord to) {
        if (from.axisAtEnd().isEmpty()) {
            return new NotKnown(
                    from,
                    to,
                    "It is not known how night " + from.id().number()
                            + " left the axis: end each night with a sighting, clamps tight");
        }
        if (to.axisAtStart().isEmpty()) {
            return new NotKnown(
                    from,
                    to,
                    "It is not known how night " + to.id().number()
                            + " found the axis: take a sighting before anything is turned");
        }
        Drifted drifted = new Drifted(
                from, to, from.axisAtEnd().orElseThrow(), to.axisAtStart().orElseThrow());
        if (!drifted.after().at().isAfter(drifted.before().at())) {
            return new NotKnown(from, to, "The first was not over when the second began");
        }
        boolean isCarried = drifted.drift().distance().compareTo(FARTHEST_DRIFT) > 0 && drifted.isSignificant();
        return isCarried ? new SetDownAgain(from, to, drifted.drift()) : drifted;
    }

    /**
     * One method for each kind, so that a new kind does not compile until every visitor handles it.
     *
     * @param <R> the result
     */
    interface Visitor<R> {
        R drifted(Drifted gap);

        R setDownAgain(SetDownAgain gap);

        R notKnown(NotKnown gap);
    }
}
