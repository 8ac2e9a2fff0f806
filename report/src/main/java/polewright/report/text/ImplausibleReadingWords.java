package polewright.report.text;

import polewright.alignment.sighting.Sighting;
import polewright.session.ImplausibleReading;
import polewright.session.event.NightEvent;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/** Describes a sighting that would put the axis implausibly far from the pole. */
public final class ImplausibleReadingWords {
    // Farther away, offsets east and up on a plane no longer describe the sky.
    private static final double MOST_DEG = 90;
    // If one component is less than this fraction of the offset, only the other direction is given.
    private static final double ONE_WAY = 0.05;

    private ImplausibleReadingWords() {}

    /** The value and the limit, without a full stop. */
    public static String what(Sighting sighting, ImplausibleReading far, Site site) {
        return EventWords.of(new NightEvent.SightingTaken(sighting)) + " would put the axis " + where(far, site)
                + "; more than " + AngleWords.degrees(ImplausibleReading.FAR) + " off is unlikely";
    }

    /** What to do about it, an imperative without its full stop. */
    public static String check(ImplausibleReading far) {
        return "read it again"
                + far.cause().map(cause -> "; it would fit if " + cause).orElse("");
    }

    private static String where(ImplausibleReading far, Site site) {
        double share = Math.abs(far.east().radians()) / far.distance().radians();
        if (share < ONE_WAY) {
            return size(far.up()) + (far.up().radians() > 0 ? " above" : " below") + " the pole, which is at "
                    + AngleWords.degrees(site.poleAltitude());
        }
        if (share > 1 - ONE_WAY * ONE_WAY) {
            // On the sky a turn in azimuth counts less the higher the pole is.
            Angle azimuth = far.east().times(1 / site.latitude().cos());
            return size(azimuth) + (azimuth.radians() > 0 ? " east" : " west") + " of the pole in azimuth ("
                    + size(far.east()) + " on the sky)";
        }
        return size(far.distance()) + " from the pole";
    }

    private static String size(Angle angle) {
        return angle.abs().degrees() > MOST_DEG ? "over 90°" : AngleWords.degrees(angle.abs());
    }
}
