package polewright.alignment.fix;

import java.util.List;
import java.util.Optional;
import polewright.mount.rig.Rig;
import polewright.sky.place.Site;

/**
 * The steps of a night that are far enough back to be settled, condensed into how they left the axis and the screws.
 *
 * <p>What was set aside among them stays set aside, and no turn among them is suspected any more.
 *
 * @param rig as its owner and earlier nights tell it
 * @param senses how sure it is by these steps which way its screws go
 * @param scatter of tonight's readings by these steps
 * @param left the axis and the screws after these steps, as these steps tell; empty before the first step of a night
 * @param agreements how their sightings agreed with the rest of the night when they were condensed
 * @param shifts how far the axis went at each shift among them
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

    /** The same with readings that scatter otherwise. */
    CondensedPast scattering(NightScatter other) {
        return new CondensedPast(site, rig, senses, other, left, agreements, shifts);
    }

    /**
     * The axis and the screws where these steps end.
     *
     * @param other the rig, perhaps doubted: its screws are then as much less known as by that rig's word
     */
    AxisState leaves(Rig other) {
        AxisState byThatRig = AxisState.prior(site, other);
        return left.map(state -> other.equals(rig) ? state : state.doubting(AxisState.prior(site, rig), byThatRig))
                .orElse(byThatRig);
    }
}
