package polewright.drawing.zone;

import java.util.EnumSet;
import java.util.Set;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.drawing.Box;

/**
 * A mark at a single point of a map.
 *
 * @param at the point, on the paper
 * @param box the area of the mark
 */
record MapMark(Kind kind, Vector2D at, Box box) {
    /** In the order in which they are named. */
    enum Kind {
        NOW("now", "axis now"),
        POSSIBLE("possible", "possible axis"),
        AIM("aim", "best aim"),
        POLE("pole", "true pole"),
        FIRST_FIX("first-fix", "first fix"),
        GOAL("goal", "after turning"),
        EARLIER("earlier", "an earlier fix");

        private final String id;
        private final String words;

        Kind(String id, String words) {
            this.id = id;
            this.words = words;
        }

        /** Its CSS class in the SVG. */
        String id() {
            return id;
        }

        String words() {
            return words;
        }
    }

    private static final Set<Kind> AIM_AND_POLE = EnumSet.of(Kind.AIM, Kind.POLE);
    // Marks closer than this are indistinguishable.
    private static final double ONE_PLACE = 9;

    /** Whether both must share one label. */
    boolean nearlyCoincidesWith(MapMark other) {
        Set<Kind> kinds = EnumSet.of(kind, other.kind);
        return at.distance(other.at) < ONE_PLACE
                || (kinds.equals(AIM_AND_POLE) && box.grown(2).meets(other.box));
    }
}
