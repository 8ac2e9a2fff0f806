package polewright.planning.tonight;

import java.util.List;
import polewright.sky.angle.Angle;
import polewright.sky.atlas.NamedStar;
import polewright.sky.atlas.NamedStars;
import polewright.sky.place.ObservingMoment;

/**
 * The well-known stars visible to the eye, with their places at one moment.
 *
 * @param up those above the horizon, brightest first
 */
record StarsInView(List<StarInView> up) {
    private static final double FAINTEST = 3.5;

    private static final class Known {
        static final List<NamedStar> BY_NAME = NamedStars.bundled().all().stream()
                .filter(star -> star.magnitude() <= FAINTEST && !star.names().isEmpty())
                .filter(NamedStars.bundled()::isFoundByItsLabel)
                .toList();
    }

    StarsInView {
        up = List.copyOf(up);
    }

    static StarsInView at(ObservingMoment moment) {
        return new StarsInView(Known.BY_NAME.stream()
                .map(star -> StarInView.of(star, moment))
                .filter(seen -> seen.altitude().radians() > 0)
                .toList());
    }

    /** Whether nothing brighter is within that distance. */
    boolean isBrightestWithin(StarInView star, Angle distance) {
        return up.stream()
                .filter(other -> other.magnitude() < star.magnitude())
                .noneMatch(other -> other.separation(star).compareTo(distance) < 0);
    }

    /** Stars that could be mistaken for it: of similar brightness, and within that distance. */
    List<StarInView> lookalikes(StarInView star, Angle distance, double magnitudes) {
        return up.stream()
                .filter(other -> !other.equals(star))
                .filter(other -> Math.abs(other.magnitude() - star.magnitude()) < magnitudes)
                .filter(other -> other.separation(star).compareTo(distance) < 0)
                .toList();
    }
}
