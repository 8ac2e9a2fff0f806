package polewright.planning.seasons;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.sky.angle.Angle;

/** What became of the axis between two nights, while nobody was there. */
public sealed interface NightGap {
    NightRecord from();

    NightRecord to();

    /**
     * It went from where the earlier night left it to where the later one found it.
     *
     * @param left at the end of the earlier night
     * @param found at the beginning of the later one
     */
    record Drifted(NightRecord from, NightRecord to, AxisAtTime left, AxisAtTime found) implements NightGap {
        // What chance exceeds once in a hundred with two figures: −2 ln 0.01, exactly.
        private static final double ONCE_IN_A_HUNDRED = 9.2103;

        /** How far it went, on the sky. */
        public AxisOffset drift() {
            return found.offset().minus(left.offset());
        }

        /** Of {@link #drift}: both ends together. */
        public OffsetCovariance covariance() {
            return left.covariance().plus(found.covariance());
        }

        /** Whether it is more than the uncertainty explains, but for one time in a hundred. */
        public boolean isMoreThanUncertainty() {
            return covariance().normalisedSquare(drift()) > ONCE_IN_A_HUNDRED;
        }

        public Duration over() {
            return Duration.between(left.at(), found.at());
        }
    }

    /** It went farther than a pier moves: the mount was set down again, or moved by hand. */
    record SetDownAnew(NightRecord from, NightRecord to, AxisOffset by) implements NightGap {}

    /**
     * It cannot be told.
     *
     * @param reason a whole sentence without its full stop
     */
    record NotKnown(NightRecord from, NightRecord to, String reason) implements NightGap {}

    /** No pier or wedge that is left alone goes farther: beyond this somebody carried it (common practice). */
    Angle FARTHEST_DRIFT = Angle.ofDegrees(1);

    /** From each night to the next that tells of the axis, in the order in which they were. */
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
     * @param nights all that were at the same place with the same rig, in order, these two among them
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
        if (from.left().isEmpty()) {
            return new NotKnown(
                    from,
                    to,
                    "It is not known how night " + from.id().number()
                            + " left the axis: end each night with a sighting, clamps tight");
        }
        if (to.found().isEmpty()) {
            return new NotKnown(
                    from,
                    to,
                    "It is not known how night " + to.id().number()
                            + " found the axis: take a sighting before anything is turned");
        }
        Drifted drifted =
                new Drifted(from, to, from.left().orElseThrow(), to.found().orElseThrow());
        if (!drifted.found().at().isAfter(drifted.left().at())) {
            return new NotKnown(from, to, "The first was not over when the second began");
        }
        boolean isCarried = drifted.drift().distance().compareTo(FARTHEST_DRIFT) > 0 && drifted.isMoreThanUncertainty();
        return isCarried ? new SetDownAnew(from, to, drifted.drift()) : drifted;
    }
}
