package polewright.alignment.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.alignment.fix.AxisState;
import polewright.alignment.sighting.StillPoint;
import polewright.mount.AxisPointing;
import polewright.mount.rig.ClockDirection;
import polewright.mount.rig.HandTurns;
import polewright.mount.rig.Optic;
import polewright.sky.angle.Angle;

/** What the view does while the screws are turned, by exact rotation of a tube that is rigid with the axis. */
final class SkyInView {
    // A move of more than this many fields is watched in a wider one.
    private static final double MOST_FIELDS = 0.75;

    private SkyInView() {}

    /** For each turn in order, what is seen meanwhile, with the tube along the axis. */
    static List<SkyMeanwhile> during(Situation situation, List<ScrewTurn> turns) {
        List<SkyMeanwhile> seen = new ArrayList<>();
        AxisState before = situation.fix().state();
        for (ScrewTurn turn : turns) {
            boolean azimuth = turn.screw() == ScrewTurn.Which.AZIMUTH;
            AxisState after = before.afterTurns(
                    situation.rig(), azimuth ? turn.made() : HandTurns.NONE, azimuth ? HandTurns.NONE : turn.made());
            Vector2D move = moveOnSky(before.axis().elevatedEnd(), before.axis(), after.axis());
            Angle size = new Angle(move.getNorm());
            AxisState from = before;
            optic(situation, size)
                    .ifPresent(optic -> seen.add(inView(
                            turn.screw(),
                            optic,
                            SightingPlanner.poleStarIsInReach(situation, from, optic.field()),
                            move)));
            before = after;
        }
        return List.copyOf(seen);
    }

    /** The narrowest optic that shows the move, else the widest there is. */
    private static Optional<Optic> optic(Situation situation, Angle move) {
        return situation.rig().optics().stream()
                .filter(o -> move.compareTo(o.field().times(MOST_FIELDS)) <= 0)
                .min(Comparator.comparing(Optic::field))
                .or(() -> situation.rig().widestOptic());
    }

    private static SkyMeanwhile inView(ScrewTurn.Which screw, Optic optic, boolean isPoleStar, Vector2D moveOnSky) {
        Vector2D move = optic.view().fromSky(moveOnSky);
        return new SkyMeanwhile(
                screw,
                optic.name(),
                isPoleStar,
                move.getNorm() / optic.field().radians(),
                ClockDirection.ofAngle(new Angle(Math.atan2(move.getX(), move.getY()))));
    }

    /**
     * How a star in the middle of the tube's view moves in it while the axis goes from one pointing to another, radians:
     * (right, up) as the naked eye facing along the tube sees it, up being the side of the tube that was toward the zenith.
     *
     * @param tube ENU unit vector of where the tube points before
     */
    static Vector2D moveOnSky(Vector3D tube, AxisPointing before, AxisPointing after) {
        // The tube turns with the axis; in its own view it stands still and the star turns back.
        return StillPoint.seenFrom(tube, turning(before, after).applyInverseTo(tube));
    }

    /** The turn of everything that the wedge carries: about the vertical, and about the wedge's hinge. */
    private static Rotation turning(AxisPointing before, AxisPointing after) {
        Angle azimuth = after.azimuth().minus(before.azimuth()).wrappedSigned();
        Angle altitude = after.altitude().minus(before.altitude());
        Vector3D right = new Vector3D(before.azimuth().cos(), -before.azimuth().sin(), 0);
        Rotation raised = new Rotation(right, altitude.radians(), RotationConvention.VECTOR_OPERATOR);
        // Azimuth grows clockwise from above, which is a negative turn about the upward vertical.
        Rotation swung = new Rotation(Vector3D.PLUS_K, -azimuth.radians(), RotationConvention.VECTOR_OPERATOR);
        return swung.applyTo(raised);
    }
}
