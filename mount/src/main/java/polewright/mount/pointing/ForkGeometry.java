package polewright.mount.pointing;

import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.AxisPointing;
import polewright.sky.place.Site;

/** A fork with its errors, computed once for many readings: terms in radians, and the orientation of its own frame. */
final class ForkGeometry {
    final double zero;
    final double declinationZero;
    final double notSquare;
    final double sagFlat;
    final double sagSide;
    final double cosCone;
    final double sinCone;
    final double tubeSag;
    private final Site site;
    private final AxisPointing pointing;
    private final Frame frame;

    /** @param terms radians in the order of {@link PointingTerm} */
    ForkGeometry(Site site, double[] terms) {
        this.site = site;
        pointing = AxisPointing.of(site, TermValues.axisOffset(terms));
        zero = terms[PointingTerm.HOUR_ANGLE_ZERO.column()];
        declinationZero = terms[PointingTerm.DECLINATION_ZERO.column()];
        notSquare = terms[PointingTerm.AXES_NOT_SQUARE.column()];
        sagFlat = terms[PointingTerm.FORK_SAG_FLAT.column()];
        sagSide = terms[PointingTerm.FORK_SAG_SIDE.column()];
        double cone = terms[PointingTerm.CONE.column()];
        cosCone = Math.cos(cone);
        sinCone = Math.sin(cone);
        tubeSag = terms[PointingTerm.TUBE_SAG.column()];
        frame = Frame.of(pointing.northernEnd(site));
    }

    /** Derivatives of the frame with respect to the axis offset. */
    AxisSlopes axisSlopes() {
        double sign = site.hemisphereSign();
        return new AxisSlopes(
                frame.slope(pointing.slopeEast(site).scalarMultiply(sign)),
                frame.slope(pointing.slopeUp(site).scalarMultiply(sign)));
    }

    /** The east (0), north (1) or up (2) component of a direction in the mount's frame. */
    double enu(int part, double meridian, double east, double pole) {
        return frame.enu(part, meridian, east, pole);
    }

    /** The tube's direction: a unit vector east, north, up. */
    Vector3D direction(MountReading reading) {
        ForkDirection tube = new ForkDirection(this);
        tube.at(reading.hourAngle().radians(), reading.declination().radians());
        return new Vector3D(tube.direction());
    }

    /** Changes of the mount's frame per radian that its axis moves east, and up. */
    record AxisSlopes(Frame east, Frame up) {}

    /** Three directions of the mount (or derivatives of them) in the sky: meridian; horizontal and east of it; axis. */
    static final class Frame {
        private final Vector3D eastward;
        private final Vector3D axis;
        private final double[] parts;

        private Frame(Vector3D meridianward, Vector3D eastward, Vector3D axis) {
            this.eastward = eastward;
            this.axis = axis;
            parts = new double[] {
                meridianward.getX(), eastward.getX(), axis.getX(),
                meridianward.getY(), eastward.getY(), axis.getY(),
                meridianward.getZ(), eastward.getZ(), axis.getZ()
            };
        }

        private static Frame of(Vector3D axis) {
            Vector3D eastward = ForkModel.eastward(axis);
            return new Frame(eastward.crossProduct(axis), eastward, axis);
        }

        double enu(int part, double meridian, double east, double pole) {
            return meridian * parts[3 * part] + east * parts[3 * part + 1] + pole * parts[3 * part + 2];
        }

        /** Derivative of all three for a change of the axis. */
        private Frame slope(Vector3D axisChange) {
            Vector3D eastChange = eastwardSlope(axisChange);
            Vector3D meridianChange =
                    new Vector3D(1, eastChange.crossProduct(axis), 1, eastward.crossProduct(axisChange));
            return new Frame(meridianChange, eastChange, axisChange);
        }

        /** Horizontal directions rotate about the vertical. */
        private Vector3D eastwardSlope(Vector3D axisChange) {
            double square = axis.getX() * axis.getX() + axis.getY() * axis.getY();
            if (square < 1e-24) {
                return Vector3D.ZERO;
            }
            double turn = (axis.getX() * axisChange.getY() - axis.getY() * axisChange.getX()) / square;
            return new Vector3D(-turn * eastward.getY(), turn * eastward.getX(), 0);
        }
    }
}
