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

/** How the view moves while the screws are turned, by exact rotation of a tube fixed to the axis. */
final class SkyInView {
    // A move of more than this many field widths calls for a wider field.
    private static final double MOST_FIELDS = 0.75;

    private SkyInView() {}

    /** What is seen during each turn in order, with the tube along the axis. */
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

    /** The narrowest optic that shows the whole move, or the widest if none does. */
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
     * The move of a star at the centre of the tube's view while the axis moves from one pointing to another, radians:
     * (right, up) as seen by the naked eye looking along the tube, where up is the side of the tube that was toward the
     * zenith.
     *
     * @param tube ENU unit vector of the tube's direction before the move
     */
    static Vector2D moveOnSky(Vector3D tube, AxisPointing before, AxisPointing after) {
        // The tube turns with the axis, so in its own frame the star turns by the inverse rotation.
        return StillPoint.seenFrom(tube, turning(before, after).applyInverseTo(tube));
    }

    /** The rotation of everything that the wedge carries: about the vertical and about the wedge's hinge. */
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
