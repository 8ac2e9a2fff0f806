package polewright.session;

import polewright.alignment.sighting.DriftDirection;
import polewright.alignment.sighting.ReadLength;
import polewright.alignment.sighting.Sighting;
import polewright.alignment.sighting.StarDrift;
import polewright.alignment.sighting.StillPoint;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.View;
import polewright.sky.angle.Angle;

/**
 * Converts a sighting through an optic that was entered wrongly to the corrected optic. A sighting does not name its
 * optic: it is assumed to be through this one if its field or division, and its view, are this one's.
 */
final class SightingThroughOptic {
    private SightingThroughOptic() {}

    static Sighting of(Sighting logged, Optic entered, Optic corrected) {
        if (logged instanceof StillPoint still && isIn(still.distance(), entered) && isBy(still.view(), entered)) {
            ReadLength distance = through(still.distance(), corrected);
            return new StillPoint(
                    still.at(),
                    still.star(),
                    distance,
                    still.toward(),
                    through(still.view(), entered, corrected),
                    scaled(still.sigma(), still.distance(), distance));
        }
        return logged instanceof StarDrift drift && isIn(drift.drift(), entered)
                ? drift(drift, entered, corrected)
                : logged;
    }

    private static Sighting drift(StarDrift drift, Optic entered, Optic corrected) {
        DriftDirection direction = drift.direction();
        if (direction instanceof DriftDirection.TowardEdge edge) {
            if (!isBy(edge.view(), entered)) {
                return drift;
            }
            direction = new DriftDirection.TowardEdge(edge.edge(), through(edge.view(), entered, corrected));
        } else if (direction instanceof DriftDirection.TowardEdgeGivenWest edge) {
            if (edge.mirrored() != isMirrored(entered)) {
                return drift;
            }
            direction = new DriftDirection.TowardEdgeGivenWest(edge.edge(), edge.west(), isMirrored(corrected));
        }
        ReadLength length = through(drift.drift(), corrected);
        return new StarDrift(
                drift.at(),
                drift.length(),
                drift.star(),
                length,
                direction,
                scaled(drift.sigma(), drift.drift(), length));
    }

    private static boolean isIn(ReadLength length, Optic optic) {
        return switch (length.unit()) {
            case FIELDS -> isSame(length.perUnit(), optic.field());
            case DIVISIONS ->
                optic.division().filter(one -> isSame(one, length.perUnit())).isPresent();
            case ARCSECONDS, PIXELS -> false;
        };
    }

    private static boolean isSame(Angle one, Angle other) {
        return Math.abs(one.minus(other).arcseconds()) < 1e-3;
    }

    private static boolean isMirrored(Optic optic) {
        return optic.view().orientation() == Orientation.MIRRORED;
    }

    /** The view may also be rotated, by a diagonal turned sideways. */
    private static boolean isBy(View view, Optic optic) {
        return view.orientation() == optic.view().orientation();
    }

    private static View through(View view, Optic entered, Optic corrected) {
        return new View(
                corrected.view().orientation(),
                view.turned()
                        .minus(entered.view().turned())
                        .plus(corrected.view().turned()));
    }

    private static ReadLength through(ReadLength length, Optic optic) {
        Angle perUnit = length.unit() == ReadLength.Unit.FIELDS
                ? optic.field()
                : optic.division().orElse(length.perUnit());
        return new ReadLength(length.count(), length.unit(), perUnit);
    }

    /** The uncertainty was given in the same unit. */
    private static Angle scaled(Angle sigma, ReadLength before, ReadLength after) {
        return sigma.times(after.perUnit().radians() / before.perUnit().radians());
    }
}
