package polewright.alignment.fix;

import java.util.List;
import java.util.Optional;
import polewright.mount.rig.Rig;
import polewright.sky.place.Site;

/**
 * The older steps of a night, condensed into the state of the axis and the screws after them.
 *
 * <p>Sightings among them that were set aside stay set aside, and their turns are no longer suspected.
 *
 * @param rig as described by its owner and by earlier nights
 * @param senses the screw senses that these steps have shown
 * @param scatter of tonight's readings, from these steps
 * @param left the state after these steps, from these steps alone; empty before the first step of a night
 * @param agreements how their sightings agreed with the rest of the night when they were condensed
 * @param shifts how far the axis moved at each shift among them
 */
record CondensedPast(
        Site site,
        Rig rig,
        ScrewSenses senses,
        NightScatter scatter,
        Optional<AxisState> left,
        List<Agreement> agreements,
        List<SmoothedNight.Moved> shifts) {
    /** Nothing has happened yet. */
    static CondensedPast none(Site site, Rig rig) {
        return new CondensedPast(
                site, rig, ScrewSenses.before(rig), NightScatter.AS_STATED, Optional.empty(), List.of(), List.of());
    }

    /** The same with a different scatter of the readings. */
    CondensedPast scattering(NightScatter other) {
        return new CondensedPast(site, rig, senses, other, left, agreements, shifts);
    }

    /**
     * The state after these steps.
     *
     * @param other the rig to use. If its screws are less well known than this rig's, the state's screw sigmas are
     *     widened in proportion
     */
    AxisState leaves(Rig other) {
        AxisState byThatRig = AxisState.prior(site, other);
        return left.map(state -> other.equals(rig) ? state : state.doubting(AxisState.prior(site, rig), byThatRig))
                .orElse(byThatRig);
    }
}
