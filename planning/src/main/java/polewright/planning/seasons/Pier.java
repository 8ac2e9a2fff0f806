package polewright.planning.seasons;

import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * One place with one mount on it: the nights that form one series.
 *
 * @param site its site
 * @param rig the name of the rig
 */
public record Pier(Site site, String rig) {
    // About a kilometre: coordinates are typed from a map one night and from a phone the next.
    private static final Angle SAME_PLACE = Angle.ofDegrees(0.01);

    public static Pier of(NightEvent.Begun begun) {
        return new Pier(begun.site(), begun.rig().name());
    }

    /** Whether a night with this beginning was at this place with this rig. */
    public boolean holds(NightEvent.Begun begun) {
        return rig.equals(begun.rig().name()) && isAt(begun.site());
    }

    /** Whether a site is this one, within the accuracy of typed coordinates. */
    public boolean isAt(Site other) {
        return isNear(site.latitude().minus(other.latitude()))
                && isNear(site.longitude().minus(other.longitude()).wrappedSigned());
    }

    private static boolean isNear(Angle apart) {
        return apart.abs().compareTo(SAME_PLACE) <= 0;
    }
}
