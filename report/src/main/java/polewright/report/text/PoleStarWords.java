package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import polewright.mount.rig.Optic;
import polewright.session.NightState;
import polewright.session.PoleStarSearch;
import polewright.sky.angle.Angle;

/** How to find a pole star that is outside the field: in fists for the eye, in field widths for the finder. */
public final class PoleStarWords {
    // A move of less than a quarter of a field is unnecessary.
    private static final double LEAST_FIELDS = 0.25;

    private PoleStarWords() {}

    /** Several tagged lines; none unless the observer said that the pole star is not in view. */
    public static List<Line> of(NightState night) {
        Optional<Optic> finder = night.situation().rig().widestOptic();
        if (!night.skipped().isPoleStarOutOfView() || finder.isEmpty()) {
            return List.of();
        }
        return PoleStarSearch.of(night)
                .map(search -> lines(search, finder.get(), night))
                .orElse(List.of());
    }

    private static List<Line> lines(PoleStarSearch search, Optic finder, NightState night) {
        String star = search.star().name();
        List<Line> lines = new ArrayList<>();
        lines.add(Tag.FIND.line("To bring " + star + " into view, face the pole and look along the tube in its home"
                + " position. By the fix " + star + " is " + toTheEye(search) + " (±"
                + Math.max(1, Math.round(2 * search.sigma().degrees())) + "°). A fist at arm's length is 10° wide."));
        lines.add(Tag.SWEEP.line(sweep(search, finder)));
        lines.add(Tag.CARE.line(
                "The next step moves the whole mount. It is heavy: work with a second person. Clamp the tube"
                        + " first; "
                        + night.begun().rig().kind().weightCaution() + "; keep the tripod from tipping."));
        lines.add(Tag.SWING.line("Or move the mount by hand until " + star + " is in the " + finder.name()
                + byFields(search, finder) + "."));
        lines.add(Tag.THEN.line(
                "after moving it: " + Wrapping.unbroken("polewright knock") + ", then sight the centre of rotation."));
        return lines;
    }

    /** {@code 1 fist (9°) to the left and half a fist (4°) above where it points}. */
    private static String toTheEye(PoleStarSearch search) {
        List<String> ways = new ArrayList<>();
        addWay(ways, search.right(), " to the right", " to the left");
        addWay(ways, search.up(), " up", " down");
        return ways.isEmpty() ? "about where it points" : "about " + String.join(" and ", ways);
    }

    private static void addWay(List<String> ways, Angle angle, String positive, String negative) {
        if (angle.abs().degrees() >= 0.5) {
            ways.add(fists(angle.abs()) + (angle.radians() >= 0 ? positive : negative));
        }
    }

    private static String fists(Angle angle) {
        return StarFindingWords.fists(angle) + String.format(Locale.ROOT, " (%.0f°)", angle.degrees());
    }

    /** First to its expected position, then around it as far as the uncertainty. */
    private static String sweep(PoleStarSearch search, Optic finder) {
        String way = fieldsEachWay(search, finder);
        long around = Math.max(
                1, Math.round(2 * search.sigma().degrees() / finder.field().degrees()));
        return (way.isEmpty() ? "Start where the tube points" : "Move the tube " + way) + ", then row by row, half a "
                + finder.name() + " field at a time, " + fields((double) around)
                + " each way. Count the fields from home to the star: the mount has to move as far.";
    }

    private static String byFields(PoleStarSearch search, Optic finder) {
        String way = fieldsEachWay(search, finder);
        return way.isEmpty() ? "" : ": by the fix, " + way;
    }

    private static String fieldsEachWay(PoleStarSearch search, Optic finder) {
        List<String> ways = new ArrayList<>();
        addFields(ways, search.right(), finder, " to the right", " to the left");
        addFields(ways, search.up(), finder, " up", " down");
        return String.join(" and ", ways);
    }

    private static void addFields(List<String> ways, Angle angle, Optic finder, String positive, String negative) {
        double fields = angle.abs().degrees() / finder.field().degrees();
        if (fields >= LEAST_FIELDS) {
            ways.add(fields(fields) + (angle.radians() >= 0 ? positive : negative));
        }
    }

    /** To the nearest half: {@code half a field}, {@code 1½ fields}. */
    static String fields(double fields) {
        long halves = Math.max(1, Math.round(fields * 2));
        if (halves == 1) {
            return "half a field";
        }
        return halves / 2 + (halves % 2 == 0 ? "" : "½") + (halves == 2 ? " field" : " fields");
    }
}
