package polewright.planning.seasons;

import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * One place with one mount on it: the nights that can be put in one row.
 *
 * @param site where it stands
 * @param rig the name of the rig
 */
public record Pier(Site site, String rig) {
    // About a kilometre: positions are typed from a map one night and from a phone the next.
    private static final Angle SAME_PLACE = Angle.ofDegrees(0.01);

    public static Pier of(NightEvent.Begun begun) {
        return new Pier(begun.site(), begun.rig().name());
    }

    /** Whether a night that began so was at this place with this rig. */
    public boolean holds(NightEvent.Begun begun) {
        return rig.equals(begun.rig().name()) && isAt(begun.site());
    }

    /** Whether a site is this one, as near as sites are typed. */
    public boolean isAt(Site other) {
        return isNear(site.latitude().minus(other.latitude()))
                && isNear(site.longitude().minus(other.longitude()).wrappedSigned());
    }

    private static boolean isNear(Angle apart) {
        return apart.abs().compareTo(SAME_PLACE) <= 0;
    }
}
