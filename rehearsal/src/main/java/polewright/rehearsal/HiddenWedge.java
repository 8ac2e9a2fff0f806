package polewright.rehearsal;

import java.util.random.RandomGenerator;
import org.hipparchus.geometry.euclidean.threed.Rotation;
import org.hipparchus.geometry.euclidean.threed.RotationConvention;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.axis.AxisOffset;
import polewright.axis.AxisPointing;
import polewright.axis.rig.Rig;
import polewright.axis.rig.Screw;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * What the person at the wedge does not know: where the axis really points, how the base leans, and what the screws
 * really do.
 *
 * @param axis ENU unit vector of the axis's elevated end
 * @param azimuthAxis ENU unit vector that the azimuth screw turns about: the vertical, but for the lean of the base
 * @param azimuthFactor what the azimuth screw does over what the rig says
 * @param altitudeFactor what the altitude screw does over what the rig says
 * @param lastAzimuthSense +1 when the azimuth screw was last turned clockwise, −1 the other way, 0 not yet
 * @param lastAltitudeSense the same of the altitude screw
 */
public record HiddenWedge(
        Site site,
        Rig rig,
        Vector3D axis,
        Vector3D azimuthAxis,
        double azimuthFactor,
        double altitudeFactor,
        double lastAzimuthSense,
        double lastAltitudeSense) {
    /** A wedge with this offset, its screws and lean drawn as uncertain as the rig says they are. */
    public static HiddenWedge of(Site site, Rig rig, AxisOffset offset, RandomGenerator random) {
        double lean = rig.levelSigma().radians();
        Vector3D azimuthAxis = new Vector3D(lean * random.nextGaussian(), lean * random.nextGaussian(), 1).normalize();
        return new HiddenWedge(
                site,
                rig,
                AxisPointing.of(site, offset).elevatedEnd(),
                azimuthAxis,
                1 + rig.azimuthScrew().relativeGainSigma() * random.nextGaussian(),
                1 + rig.altitudeScrew().relativeGainSigma() * random.nextGaussian(),
                0,
                0);
    }

    public AxisPointing pointing() {
        return new AxisPointing(axis);
    }

    public AxisOffset offset() {
        return pointing().offset(site);
    }

    /** Screws turned as asked, clockwise positive, by a hand no better than the rig says. */
    public HiddenWedge turned(double azimuthTurns, double altitudeTurns, RandomGenerator random) {
        double raisedBy = byHand(rig.altitudeScrew(), altitudeTurns, lastAltitudeSense, random);
        double swungBy = byHand(rig.azimuthScrew(), azimuthTurns, lastAzimuthSense, random);
        Vector3D raised = raise(axis, raisedBy, altitudeFactor);
        double swung = azimuthFactor
                * rig.azimuthScrew().move(swungBy, pointing().altitude()).radians();
        // Azimuth grows clockwise from above, which is a negative turn about the upward axis.
        Vector3D turned = new Rotation(azimuthAxis, -swung, RotationConvention.VECTOR_OPERATOR).applyTo(raised);
        return new HiddenWedge(
                site,
                rig,
                turned,
                azimuthAxis,
                azimuthFactor,
                altitudeFactor,
                azimuthTurns == 0 ? lastAzimuthSense : Math.signum(azimuthTurns),
                altitudeTurns == 0 ? lastAltitudeSense : Math.signum(altitudeTurns));
    }

    /** Clamps tightened or loosened: the axis shifts a little. */
    public HiddenWedge clamped(RandomGenerator random) {
        return shifted(rig.clampSigma(), random);
    }

    /** The whole mount moved by hand, about so far, facing the pole: right and up positive. */
    public HiddenWedge moved(Angle azimuth, Angle altitude, RandomGenerator random) {
        Angle roughly = Angle.ofDegrees(1);
        AxisPointing there = AxisPointing.of(
                pointing().azimuth().plus(azimuth).plus(roughly.times(random.nextGaussian())),
                pointing().altitude().plus(altitude).plus(roughly.times(random.nextGaussian())));
        return new HiddenWedge(
                site,
                rig,
                there.elevatedEnd(),
                azimuthAxis,
                azimuthFactor,
                altitudeFactor,
                lastAzimuthSense,
                lastAltitudeSense);
    }

    private Vector3D raise(Vector3D from, double turns, double factor) {
        double rise = factor
                * rig.altitudeScrew()
                        .move(turns, new AxisPointing(from).altitude())
                        .radians();
        // The hinge leans with the base: square to the axis and to the base's own vertical.
        Vector3D hinge = from.crossProduct(azimuthAxis).normalize();
        return new Rotation(hinge, rise, RotationConvention.VECTOR_OPERATOR).applyTo(from);
    }

    private HiddenWedge shifted(Angle sigma, RandomGenerator random) {
        Vector3D up = azimuthAxis
                .subtract(axis.scalarMultiply(azimuthAxis.dotProduct(axis)))
                .normalize();
        Vector3D right = axis.crossProduct(up);
        Vector3D moved = axis.add(new Vector3D(
                        sigma.radians() * random.nextGaussian(), right, sigma.radians() * random.nextGaussian(), up))
                .normalize();
        return new HiddenWedge(
                site, rig, moved, azimuthAxis, azimuthFactor, altitudeFactor, lastAzimuthSense, lastAltitudeSense);
    }

    /** What takes effect of the turns asked for: a hand's error, and on reversal anything from none to all of the play. */
    private static double byHand(Screw screw, double turns, double lastSense, RandomGenerator random) {
        if (turns == 0) {
            return 0;
        }
        double lost = turns * lastSense < 0 ? screw.backlashTurns() * random.nextDouble() : 0;
        double effective = Math.signum(turns) * Math.max(0, Math.abs(turns) - lost);
        return effective + screw.handSigmaTurns() * random.nextGaussian();
    }
}
