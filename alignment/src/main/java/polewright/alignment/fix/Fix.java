package polewright.alignment.fix;

import java.util.List;
import java.util.Optional;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Rig;

/** The estimate of where the axis points after the events so far. */
public sealed interface Fix {
    /** A place that is less probable than this is not reported. */
    double WORTH_REPORTING = 0.05;

    /** The best estimate of the axis and the screws, whatever the outcome. */
    AxisState state();

    /** The rig as described, with the screw directions that the night's turns have shown. */
    Rig rig();

    /** How certain the screw directions are. */
    ScrewSenses senses();

    /**
     * How much farther tonight's readings of the sky by eye scatter than their stated sigmas, 1 or more. The state's
     * uncertainty and the agreements include it.
     */
    double scatter();

    /** How each sighting agrees with the rest, in order of time. */
    List<Agreement> agreements();

    /** The explanations of the night that have not been ruled out, the most likely first; at least one. */
    List<Explanation> explanations();

    /** Whether both directions of the axis have been measured. */
    boolean isDetermined();

    /** Whether explanations that have not been ruled out put the axis in different places. */
    default boolean isInDispute() {
        return this instanceof Dubious dubious
                && dubious.dispute() == Dispute.THE_AXIS
                && explanations().size() > 1;
    }

    /**
     * Other places where the axis may be while the direction of a screw is unknown: those worth reporting and more than
     * one sigma away. Empty while explanations are in dispute, because they already include every place.
     */
    default List<ScrewSenses.Otherwise> otherPlaces() {
        if (!isDetermined() || isInDispute()) {
            return List.of();
        }
        AxisOffset here = state().offset();
        OffsetCovariance covariance = state().offsetCovariance();
        return senses().otherPlaces().stream()
                .filter(other -> other.probability() > WORTH_REPORTING)
                .filter(other -> covariance.normalisedSquare(other.offset().minus(here)) > 1)
                .toList();
    }

    /** The agreement of one event, if it is a sighting of this night. */
    default Optional<Agreement> agreement(long seq) {
        List<Agreement> all = agreements();
        // Usually one of the last.
        for (int i = all.size() - 1; i >= 0; i--) {
            if (all.get(i).seq() == seq) {
                return Optional.of(all.get(i));
            }
        }
        return Optional.empty();
    }

    /** The sightings agree, apart from outliers that were set aside. */
    record Solved(
            AxisState state,
            Rig rig,
            ScrewSenses senses,
            double scatter,
            List<Agreement> agreements,
            List<Explanation> explanations)
            implements Fix {

        @Override
        public boolean isDetermined() {
            return true;
        }
    }

    /**
     * Something was entered wrongly, and it is not certain what. The state is the weighted mean of all explanations.
     *
     * @param reason what it may be
     * @param dispute what is in doubt
     */
    record Dubious(
            AxisState state,
            Rig rig,
            ScrewSenses senses,
            double scatter,
            List<Agreement> agreements,
            List<Explanation> explanations,
            String reason,
            Dispute dispute)
            implements Fix {

        @Override
        public boolean isDetermined() {
            return true;
        }
    }

    /** What the explanations of a night disagree about. */
    enum Dispute {
        /** Where the axis is now. */
        THE_AXIS,
        /** What went wrong earlier; they all agree on where the axis is now. */
        WHAT_HAPPENED
    }

    /**
     * At least one direction of the axis has not been measured yet.
     *
     * @param missing what is not known
     */
    record Underdetermined(
            AxisState state,
            Rig rig,
            ScrewSenses senses,
            double scatter,
            List<Agreement> agreements,
            List<Explanation> explanations,
            String missing)
            implements Fix {

        @Override
        public boolean isDetermined() {
            return false;
        }
    }
}
