package polewright.alignment.fix;

import java.util.List;
import java.util.Optional;
import polewright.mount.AxisOffset;
import polewright.mount.OffsetCovariance;
import polewright.mount.rig.Rig;

/** Where the axis is held to point after the events so far. */
public sealed interface Fix {
    /** A place that is less probable is not worth telling. */
    double WORTH_TELLING = 0.05;

    /** The axis and the screws; in every outcome the best that is known. */
    AxisState state();

    /** The rig as it was told, with its screws going the way that the night's turns have shown. */
    Rig rig();

    /** How sure that is. */
    ScrewSenses senses();

    /**
     * How much farther tonight's readings of the sky by eye scatter than their stated sigmas, 1 or more. The state's
     * uncertainty and the agreements include it.
     */
    double scatter();

    /** How each sighting agrees, in order. */
    List<Agreement> agreements();

    /** The ways to explain the night that have not been ruled out, the likeliest first; one at least. */
    List<Explanation> explanations();

    /** Whether explanations that have not been ruled out put the axis in different places. */
    default boolean isInDispute() {
        return this instanceof Dubious dubious
                && dubious.dispute() == Dispute.THE_AXIS
                && explanations().size() > 1;
    }

    /**
     * Where else the axis may be, as far as that is worth telling: while it is not known which way a screw took it, and its
     * places lie more than a sigma apart. None while explanations are in dispute, which hold all places.
     */
    default List<ScrewSenses.Otherwise> otherPlaces() {
        if (this instanceof Underdetermined || isInDispute()) {
            return List.of();
        }
        AxisOffset here = state().offset();
        OffsetCovariance covariance = state().offsetCovariance();
        return senses().otherwise().stream()
                .filter(other -> other.probability() > WORTH_TELLING)
                .filter(other -> covariance.normalisedSquare(other.offset().minus(here)) > 1)
                .toList();
    }

    /** The agreement of one event, if it is a sighting of this night. */
    default Optional<Agreement> agreement(long seq) {
        List<Agreement> all = agreements();
        // Mostly one of the last.
        for (int i = all.size() - 1; i >= 0; i--) {
            if (all.get(i).seq() == seq) {
                return Optional.of(all.get(i));
            }
        }
        return Optional.empty();
    }

    /** The sightings agree, but for any that were set aside with the rest against them. */
    record Solved(
            AxisState state,
            Rig rig,
            ScrewSenses senses,
            double scatter,
            List<Agreement> agreements,
            List<Explanation> explanations)
            implements Fix {}

    /**
     * Something was entered wrongly, and it is not certain what. The state is that of all explanations together, each by its
     * weight.
     *
     * @param reason what it may be
     * @param dispute what is in doubt by it
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
            implements Fix {}

    /** What the explanations of a night disagree about. */
    enum Dispute {
        /** Where the axis is now. */
        THE_AXIS,
        /** What went wrong earlier; by all of them the axis is now in the same place. */
        WHAT_HAPPENED
    }

    /**
     * Some direction of the axis has not been told yet.
     *
     * @param missing what is not known, and what would tell it
     */
    record Underdetermined(
            AxisState state,
            Rig rig,
            ScrewSenses senses,
            double scatter,
            List<Agreement> agreements,
            List<Explanation> explanations,
            String missing)
            implements Fix {}
}
